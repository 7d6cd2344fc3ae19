using System.Globalization;

namespace Coldwright.Simulation.Cooldown;

/// <summary>The verdict of a cooldown in words.</summary>
internal static class CooldownWords
{
    /// <summary>Why it stops, or crawls, where it does.</summary>
    public static string Sentence(Plant plant, double narrowK, PlantPoint at, IReadOnlyList<StopTerm> terms, string stops, double plateau, double endK, double endS, double rate, bool asked, double? condensingK, Crossing[] crossings)
    {
        string gas = plant.Hardware.Layout.Feed?.Gas ?? "";
        string where = asked && endK > plateau + 0.5
            ? string.Create(CultureInfo.InvariantCulture, $"After {Time(endS)} the load stands at {endK:0.0} K and falls by {Math.Max(0, -rate):0.0} K/h; it would stop at {plateau:0.0} K")
            : string.Create(CultureInfo.InvariantCulture, $"It stops at {plateau:0.0} K, reached within 1 K after {Time(endS)}");
        if (condensingK is { } c)
            where += crossings.FirstOrDefault(x => x.TemperatureK == c) is { } passed
                ? string.Create(CultureInfo.InvariantCulture, $"; {gas} condenses at {c:0.0} K, passed after {Time(passed.TimeS)}")
                : string.Create(CultureInfo.InvariantCulture, $"; {gas} condenses at {c:0.0} K, which it {(plateau > c ? "never reaches" : "has not reached")}");
        double Watts(string id) => terms.FirstOrDefault(t => t.Id == id)?.Watts ?? 0;
        double endless = terms.Where(t => t.Id != "mixture").Sum(t => t.Watts);
        string account = string.Create(CultureInfo.InvariantCulture, $"An endless exchanger would leave {endless:0.0} W; the recuperator keeps {Watts("exchanger"):0.0} W of it back, the leak takes {Watts("leak"):0.0} W{(Watts("load") > 0 ? string.Create(CultureInfo.InvariantCulture, $", the load {Watts("load"):0.0} W") : "")}, stored heat {Watts("stored-heat"):0.0} W.");
        string verdict = stops switch
        {
            "exchanger" => string.Create(CultureInfo.InvariantCulture, $"The recuperator stops it: its streams lie too far apart, the narrow place is near {narrowK:0} K. A longer or better exchanger is the cure."),
            "leak" => $"The heat leak stops it: {Path(plant, at)}. Better insulation and fewer, thinner tubes through it are the cure.",
            "load" => "The load stops it: less heat into it, or more flow.",
            "mixture" => string.Create(CultureInfo.InvariantCulture, $"Mixture and pressures stop it: near {narrowK:0} K the two sides hardly differ in enthalpy. Another mixture, charge or throttle is the cure."),
            _ => $"Nothing stops it yet, it crawls: {Stored(at)}. Less mass at the cold end, or patience, is the cure.",
        };
        return $"{where}. {verdict} {account}";
    }

    /// <summary>How far it came.</summary>
    public static string Interrupted(double endS, double endK, double rate) => string.Create(CultureInfo.InvariantCulture,
        $"Stopped on your wish after {Time(endS)} of the cooldown: the load then stands at {endK:0.0} K and falls by {Math.Max(0, -rate):0.0} K/h. Where it would stop was not worked out.");

    /// <summary>How a warm-up went.</summary>
    public static string WarmUp(double fromK, double toK, CooldownSeries s, double roomK) => string.Create(CultureInfo.InvariantCulture,
        $"With the compressor standing still the load warms from {fromK:0.0} K to {toK:0.0} K in {Time(s.TimeS[^1])}, the room being at {roomK:0.0} K; the loop's pressure rises to {s.HighPressurePa.Max() / 1e5:0.0} bar absolute on the way.");

    private static string Path(Plant plant, in PlantPoint at)
    {
        double wall = at.WallLeakW, tubes = at.PenetrationLeakW, along = at.AlongLeakW, sum = wall + tubes + along;
        return wall >= tubes && wall >= along
            ? string.Create(CultureInfo.InvariantCulture, $"{wall:0.0} of {sum:0.0} W come through the insulation, {plant.Hardware.Layout.ColdBox?.GivenInsulation ?? "its layers"}")
            : tubes >= along ? string.Create(CultureInfo.InvariantCulture, $"{tubes:0.0} of {sum:0.0} W come along tubes and wires") : string.Create(CultureInfo.InvariantCulture, $"{along:0.0} of {sum:0.0} W come along the recuperator");
    }

    private static string Stored(in PlantPoint at)
    {
        var parts = new (string Name, double W)[] { ("the recuperator's metal", at.RecuperatorStoredW), ("the masses at the load", at.LoadStoredW), ("the insulation", at.InsulationStoredW) };
        var (name, w) = parts.MaxBy(p => p.W);
        return string.Create(CultureInfo.InvariantCulture, $"{at.StoredW:0.0} W of stored heat are still being carried off, most of it ({w:0.0} W) out of {name}");
    }

    private static string Time(double s) => s < 5400 ? string.Create(CultureInfo.InvariantCulture, $"{s / 60:0} min") : string.Create(CultureInfo.InvariantCulture, $"{s / 3600:0.0} h");
}

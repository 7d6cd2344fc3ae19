using System.Globalization;
using Coldwright.Quantities;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Simulation.Cooldown;

/// <summary>The verdict of a cooldown in words.</summary>
internal static class CooldownWords
{
    /// <summary>Why it stops, or crawls, where it does.</summary>
    public static Spoken Sentence(Plant plant, double narrowK, PlantPoint at, IReadOnlyList<StopTerm> terms, string stops, double plateau, double endK, double endS, double rate, bool asked, double? condensingK, Crossing[] crossings)
    {
        string gas = plant.Hardware.Layout.Feed?.Gas ?? "";
        var where = asked && endK > plateau + 0.5
            ? Spoken.Of($"After {Time(endS)} the load stands at {Temperature(endK)} and falls by {Difference(Math.Max(0, -rate))}/h; it would stop at {Temperature(plateau)}")
            : Spoken.Of($"It stops at {Temperature(plateau)}, reached within {Difference(1, "0")} after {Time(endS)}");
        if (condensingK is { } c)
            where += crossings.FirstOrDefault(x => x.TemperatureK == c) is { } passed
                ? Spoken.Of($"; {gas} condenses at {Temperature(c)}, passed after {Time(passed.TimeS)}")
                : Spoken.Of($"; {gas} condenses at {Temperature(c)}, which it {(plateau > c ? "never reaches" : "has not reached")}");
        double Watts(string id) => terms.FirstOrDefault(t => t.Id == id)?.Watts ?? 0;
        double endless = terms.Where(t => t.Id != "mixture").Sum(t => t.Watts);
        var account = Spoken.Of($"An endless exchanger would leave {endless:0.0} W; the recuperator keeps {Watts("exchanger"):0.0} W of it back, the leak takes {Watts("leak"):0.0} W{(Watts("load") > 0 ? Spoken.Of($", the load {Watts("load"):0.0} W") : "")}, stored heat {Watts("stored-heat"):0.0} W.");
        Spoken verdict = stops switch
        {
            "exchanger" => Spoken.Of($"The recuperator stops it: its streams lie too far apart, the narrow place is near {Temperature(narrowK, "0")}. A longer or better exchanger is the cure."),
            "leak" => Spoken.Of($"The heat leak stops it: {Path(plant, at)}. Better insulation and fewer, thinner tubes through it are the cure."),
            "load" => "The load stops it: less heat into it, or more flow.",
            "mixture" => Spoken.Of($"Mixture and pressures stop it: near {Temperature(narrowK, "0")} the two sides hardly differ in enthalpy. Another mixture, charge or throttle is the cure."),
            _ => Spoken.Of($"Nothing stops it yet, it crawls: {Stored(at)}. Less mass at the cold end, or patience, is the cure."),
        };
        return Spoken.Of($"{where}. {verdict} {account}");
    }

    /// <summary>How far it came.</summary>
    public static Spoken Interrupted(double endS, double endK, double rate) => Spoken.Of(
        $"Stopped on your wish after {Time(endS)} of the cooldown: the load then stands at {Temperature(endK)} and falls by {Difference(Math.Max(0, -rate))}/h. Where it would stop was not worked out.");

    /// <summary>How a warm-up went.</summary>
    public static Spoken WarmUp(double fromK, double toK, CooldownSeries s, double roomK) => Spoken.Of(
        $"With the compressor standing still the load warms from {Temperature(fromK)} to {Temperature(toK)} in {Time(s.TimeS[^1])}, the room being at {Temperature(roomK)}; the loop's pressure rises to {Pressure(s.HighPressurePa.Max())} on the way.");

    private static Spoken Path(Plant plant, in PlantPoint at)
    {
        double wall = at.WallLeakW, tubes = at.PenetrationLeakW, along = at.AlongLeakW, sum = wall + tubes + along;
        return wall >= tubes && wall >= along
            ? Spoken.Of($"{wall:0.0} of {sum:0.0} W come through the insulation, {plant.Hardware.Layout.ColdBox?.GivenInsulation ?? "its layers"}")
            : tubes >= along ? Spoken.Of($"{tubes:0.0} of {sum:0.0} W come along tubes and wires") : Spoken.Of($"{along:0.0} of {sum:0.0} W come along the recuperator");
    }

    private static Spoken Stored(in PlantPoint at)
    {
        var parts = new (string Name, double W)[] { ("the recuperator's metal", at.RecuperatorStoredW), ("the masses at the load", at.LoadStoredW), ("the insulation", at.InsulationStoredW) };
        var (name, w) = parts.MaxBy(p => p.W);
        return Spoken.Of($"{at.StoredW:0.0} W of stored heat are still being carried off, most of it ({w:0.0} W) out of {name}");
    }

    private static string Time(double s) => s < 5400 ? string.Create(CultureInfo.InvariantCulture, $"{s / 60:0} min") : string.Create(CultureInfo.InvariantCulture, $"{s / 3600:0.0} h");
}

using Coldwright.Machine.Precooling;
using Coldwright.Numerics;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>The precooler: capacity against evaporating temperature with its working point, evaporator, condenser.</summary>
internal static class PrecoolerPictures
{
    private const double BelowK = 22, AboveK = 22;
    private const int Steps = 12;

    public static IEnumerable<PartPicture> All(PartContext c, PrecoolerLoop loop, PrecoolerResult r)
    {
        var table = Table(c, loop, r);
        double? band = r.Band is { } b && r.CoolingW > 0 ? b.CoolingW / r.CoolingW : null;
        if (table.Count > 1)
            yield return new LinePicture("capacity", "Capacity against evaporating temperature", "Cooling that the loop can give and the power that its compressor takes, against the temperature at which its refrigerant evaporates, the condenser floating in its room. The dots are where the mixture's load lets it settle: a heavier load lifts the evaporating temperature along the line." + (r.RunShare < 1 ? " It cycles: the dots are means over running and standing and lie below the lines." : ""))
            {
                X = new("evaporating temperature (dew point)", "K"), Y = new("heat flow and power", "W"), FromZero = true,
                Lines = [new("cooling", "cooling", PictureRole.Cooling, [.. table.Select(t => (t.EvaporatingK, t.CoolingW))], false, band), new("power", "compressor power", PictureRole.Loss, [.. table.Select(t => (t.EvaporatingK, t.CompressorPowerW))])],
                Marks = [new("this cooler", PictureRole.Cooling, r.EvaporatingK, r.CoolingW), new("takes", PictureRole.Loss, r.EvaporatingK, r.CompressorPowerW)],
            };
        var e = r.EvaporatorProfile;
        if (e.Count > 1)
            yield return new LinePicture("evaporator", "In the evaporator", "Mixture (warm colour) and refrigerant (cold colour) against the heat exchanged, counted from the end where the mixture leaves. The mixture's line bends where its heavy components begin to condense; the refrigerant's rises at the end where it is superheated.")
            {
                X = new("heat exchanged, from the mixture's outlet", "W"), Y = new("temperature", "K"),
                Lines = [new("mixture", "mixture", PictureRole.HighSide, [.. e.Select(p => (p.HeatW, p.MixtureK))]), new("refrigerant", "refrigerant", PictureRole.LowSide, [.. e.Select(p => (p.HeatW, p.RefrigerantK))])],
                Marks = [new("mixture leaves", PictureRole.HighSide, e[0].HeatW, r.MixtureOutletK)],
            };
        var k = r.CondenserProfile;
        if (k.Count > 1)
            yield return new LinePicture("condenser", "In the condenser", "Refrigerant (warm colour) and the air that leaves each place (cold colour) against the heat given off, counted from the liquid's outlet. The steep end is hot gas that is only cooled.")
            {
                X = new("heat given off, from the liquid's outlet", "W"), Y = new("temperature", "K"),
                Lines = [new("refrigerant", "refrigerant", PictureRole.HighSide, [.. k.Select(p => (p.HeatW, p.RefrigerantK))]), new("air", "air leaving", PictureRole.LowSide, [.. k.Select(p => (p.HeatW, p.AirK))])],
            };
    }

    // colder than it delivers, or warmer than its condenser carries off, there is nothing to draw
    private static List<PrecoolerRating> Table(PartContext c, PrecoolerLoop loop, PrecoolerResult r)
    {
        var rows = new List<PrecoolerRating>();
        for (int i = 0; i <= Steps; i++)
            try
            {
                rows.AddRange(loop.CapacityTable([r.EvaporatingK - BelowK + (BelowK + AboveK) * i / Steps], c.RoomK, Math.Clamp(r.SuperheatK, 0, 30), c.Cancel));
            }
            catch (SolveException) when (rows.Count == 0 || i > Steps / 2)
            {
                continue;
            }
        return rows;
    }
}

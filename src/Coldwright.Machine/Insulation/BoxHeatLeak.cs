using System.Globalization;
using Coldwright.Machine.Description;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Insulation;

/// <summary>
/// Heat leak into the cold box: through one layer of insulation, along the tubes that cross it and along
/// listed wires and supports. Built once per machine, then cheap for many temperatures.
/// </summary>
/// <remarks>
/// <para>Insulation: shape factor (<see cref="BoxShapeFactor"/>) x conductivity integral from the inside to the outside surface,
/// in series with the surface film of the room. The whole inside is taken at the cold temperature although the recuperator's
/// warm end is warmer; the real leak is smaller.</para>
/// <para>Outside film: surface resistance 0.13 m2 K/W for still indoor air and horizontal heat flow, convection and radiation
/// together. Source: ISO 6946:2017, surface resistances. The outside temperature follows by iteration.</para>
/// <para>Tubes: straight through the wall, conduction of phosphorus-deoxidised copper between room and inner end without help from
/// the gas inside. A line to or from the recuperator arrives at its warm end; every other crossing line at the cold end. A longer
/// way through the insulation leaks less.</para>
/// </remarks>
public sealed class BoxHeatLeak
{
    /// <summary>Surface resistance of the outside, m2 K/W (ISO 6946:2017, indoor, horizontal heat flow).</summary>
    public const double OutsideSurfaceResistance = 0.13;

    private const string TubeMaterial = "copper-dhp";

    private sealed record Rod(string Name, SolidMaterial Material, double AreaOverLengthM, LeakEnd End);

    private readonly SolidMaterial _insulation;
    private readonly BoxShapeFactor _shape;
    private readonly Rod[] _rods;
    private readonly double _roomK;
    private readonly string[] _standingWarnings;

    /// <summary>Shape factor of the wall, m.</summary>
    public double ShapeFactorM => _shape.ShapeFactorM;

    /// <param name="machine">A machine with exactly one cold box.</param>
    /// <param name="solids">Where insulation and metals are looked up.</param>
    /// <exception cref="ArgumentException">No cold box, more than one, or a material nobody knows.</exception>
    public BoxHeatLeak(MachineDescription machine, SolidLibrary solids)
    {
        var boxes = machine.PartsOf<ColdBoxPart>().ToArray();
        if (boxes.Length != 1) throw new ArgumentException($"the heat leak needs exactly one cold-box, {machine.Name} has {boxes.Length}");
        var box = boxes[0];
        _roomK = machine.Room.TemperatureK;
        _insulation = solids.Find(box.Insulation);
        _shape = BoxShapeFactor.Of(box.Inside, box.WallM);
        var warnings = new List<string>();
        if (_shape.Warning is { } warning) warnings.Add(warning);
        _rods = Tubes(machine, box, solids, warnings).Concat(Penetrations(box, solids)).ToArray();
        foreach (var material in _rods.Select(r => r.Material).Prepend(_insulation).Distinct())
            if (material.Caveat is { } caveat) warnings.Add(caveat);
        _standingWarnings = warnings.ToArray();
    }

    /// <summary>Heat leak, path by path.</summary>
    /// <param name="coldTemperatureK">Temperature of everything in the box, K, above 0.</param>
    /// <param name="warmEndTemperatureK">Temperature at which the high-pressure stream enters the recuperator, K: where the tubes of the recuperator end.</param>
    public HeatLeak At(double coldTemperatureK, double warmEndTemperatureK)
    {
        var warnings = new List<string>(_standingWarnings);
        var surfaceK = OutsideSurface(coldTemperatureK);
        var paths = new List<HeatLeakPath>(_rods.Length + 1)
        {
            new("insulation", _shape.ShapeFactorM * Integral(_insulation, coldTemperatureK, surfaceK, warnings), LeakEnd.Cold),
        };
        foreach (var rod in _rods)
        {
            var innerK = rod.End == LeakEnd.Cold ? coldTemperatureK : warmEndTemperatureK;
            paths.Add(new(rod.Name, rod.AreaOverLengthM * Integral(rod.Material, innerK, _roomK, warnings), rod.End));
        }
        return new(paths, surfaceK, warnings);
    }

    /// <summary>Outside temperature at which the film brings as much heat as the wall takes, by Newton's method on a rising function.</summary>
    private double OutsideSurface(double coldK)
    {
        var film = _shape.OutsideAreaM2 / OutsideSurfaceResistance;
        var surfaceK = _roomK;
        for (var i = 0; i < 100; i++)
        {
            var excess = _shape.ShapeFactorM * _insulation.Integral(coldK, surfaceK).Value - film * (_roomK - surfaceK);
            var slope = _shape.ShapeFactorM * _insulation.Conductivity(surfaceK).Value + film;
            var step = excess / slope;
            // Half of the way to zero kelvin at most, so that a steep curve cannot throw the iterate out of range.
            surfaceK = Math.Max(surfaceK - step, surfaceK / 2);
            if (Math.Abs(step) < 1e-9 * _roomK) return surfaceK;
        }
        throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture,
            $"the outside temperature of the box did not settle in 100 steps at {coldK:0.##} K inside; last {surfaceK:0.###} K"));
    }

    private static double Integral(SolidMaterial material, double coldK, double warmK, List<string> warnings)
    {
        var (value, warning) = material.Integral(coldK, warmK);
        if (warning is not null && !warnings.Contains(warning)) warnings.Add(warning);
        return value;
    }

    private static IEnumerable<Rod> Tubes(MachineDescription machine, ColdBoxPart box, SolidLibrary solids, List<string> warnings)
    {
        foreach (var (line, inner) in ColdBoxContents.Crossing(machine))
        {
            var name = $"tube {line.From} to {line.To}";
            if (line.Tube is null)
            {
                warnings.Add($"the line {line.From} to {line.To} crosses the insulation without a tube given: its conduction is left out");
                continue;
            }
            var end = inner is RecuperatorPart ? LeakEnd.Warm : LeakEnd.Cold;
            yield return new(name, solids.Find(TubeMaterial), line.Tube.MetalAreaM2 / box.WallM, end);
        }
    }

    private static IEnumerable<Rod> Penetrations(ColdBoxPart box, SolidLibrary solids) =>
        box.Penetrations.Select((p, i) => p.AreaM2 >= 0 && p.LengthM > 0
            ? new Rod($"penetration {i + 1} {p.Material}", solids.Find(p.Material), p.AreaM2 / p.LengthM, LeakEnd.Cold)
            : throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"penetration {i + 1} of {box.Name} needs an area of 0 m2 or more and a length above 0 m, got {p.AreaM2} m2 and {p.LengthM} m")));
}

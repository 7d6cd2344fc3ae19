using Coldwright.Machine.Flow;
using Coldwright.Machine.Recuperation;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.ColdVessel;

/// <summary>What a mixture does in a coil that lies in a load of one temperature.</summary>
/// <param name="HeatW">Into the mixture, W.</param>
/// <param name="OutletEnthalpy">J/mol.</param>
/// <param name="OutletPressurePa">Pa.</param>
/// <param name="ConductanceWPerK">Sum of the local conductances between load and mixture, W/K.</param>
/// <param name="Cells">Enthalpy (J/mol) and pressure (Pa) at the middle of every cell, in flow order: what the coil holds is worked out from them.</param>
public sealed record IsothermalCoilResult(double HeatW, double OutletEnthalpy, double OutletPressurePa, double ConductanceWPerK, IReadOnlyList<(double MolarEnthalpy, double PressurePa)> Cells);

/// <summary>
/// A coil between a load of one temperature and the mixture in it: local film and friction inside, the tube's wall, and one
/// conductance per metre outside. For a vessel that conductance is taken from <see cref="ColdVesselModel"/>; for a block it is that of
/// the solder. Each cell is an exchanger against a constant temperature (n (h2 - h1) = n c (T_load - T)(1 - exp(-U ds/(n c))), c the local
/// slope dh/dT), at its middle state, which is second order and never passes the load's temperature.
/// </summary>
public sealed record IsothermalCoil
{
    private const double LeastPressureShare = 0.2, LeastSlope = 1e-9, LeastRise = 1e-3;
    private const int Rounds = 6;

    /// <summary>Bore, m, 5e-4..0.05.</summary>
    public required double BoreM { get; init; }
    /// <summary>Outside diameter, m, above the bore.</summary>
    public required double OutsideDiameterM { get; init; }
    /// <summary>Length, m, 0.01..100.</summary>
    public required double LengthM { get; init; }
    /// <summary>Mean diameter of the coil, m; null when straight.</summary>
    public double? CoilDiameterM { get; init; }
    /// <summary>From the load to the outside of the tube, W/(m K), above 0.</summary>
    public required double OutsideConductancePerLength { get; init; }
    /// <summary>Factor on the film inside, above 0.</summary>
    public double FilmScale { get; init; } = 1;
    /// <summary>Factor on the friction inside, at least 0.</summary>
    public double FrictionScale { get; init; } = 1;
    /// <summary>Cells along the coil, 4..1000.</summary>
    public int Cells { get; init; } = 24;
    /// <summary>Relative change of a cell's rise at which its rounds end, 0..1e-3; 0: all of them.</summary>
    public double Settled { get; init; }
    /// <summary>Metal of the tube.</summary>
    public string Metal { get; init; } = DistributedRecuperator.DefaultMetal;

    /// <summary>Volume inside, m3.</summary>
    public double VolumeM3 => Math.PI / 4 * BoreM * BoreM * LengthM;

    /// <summary>The passage inside.</summary>
    public FlowChannel Channel => new(Math.PI / 4 * BoreM * BoreM, BoreM, Math.PI * BoreM, 0, CoilDiameterM is { } d ? BoreM / d : 0, RecuperatorGeometry.DrawnTubeRoughnessM / BoreM);

    /// <summary>Marches from the inlet.</summary>
    /// <param name="inlet">The mixture as it enters.</param>
    /// <param name="loadK">Temperature of the load, K.</param>
    /// <param name="passage">The coil's passage tabulated, boiling; null: every correlation at every place.</param>
    /// <exception cref="ArgumentException">A value outside its range.</exception>
    /// <exception cref="Numerics.SolveException">The mixture loses its pressure in the coil.</exception>
    public IsothermalCoilResult Solve(StreamInlet inlet, double loadK, PassageTable? passage = null)
    {
        Check();
        var channel = Channel;
        double metal = Math.Log(OutsideDiameterM / BoreM) / (2 * Math.PI * SolidLibrary.Default.Find(Metal).Conductivity(Math.Max(loadK, 4)).Value);
        double h = inlet.MolarEnthalpy, p = inlet.PressurePa, n = inlet.MolarFlow, ds = LengthM / Cells, flux = 0, conductance = 0, heat = 0;
        var table = inlet.Table;
        var cells = new (double, double)[Cells];
        double momentum = double.NaN, gradient = 0;
        for (int i = 0; i < Cells; i++)
        {
            double middleP = Pressure(inlet, p, 0.5 * ds * gradient), middleH = h + (i > 0 ? 0.5 * (h - cells[i - 1].Item1) : 0), next = h, u = 0;
            PassageAnswer local = default;
            // State at the middle from the cell's own heat. The slope dT/dh is that over the whole cell: where a phase appears the local one jumps,
            // and the answer with it.
            double start = table.Temperature(h, middleP, out double slope), before = double.NaN;
            for (int round = 0; round < Rounds; round++)
            {
                slope = Math.Max(slope, LeastSlope);
                local = Local(table, passage, channel, middleH, middleP, inlet.MassFlow, slope, flux);
                u = 1 / (1 / (local.Film * FilmScale * channel.HeatedPerimeterM) + metal + 1 / OutsideConductancePerLength);
                double q = (loadK - start) / slope * -double.ExpM1(-u * ds * slope / n);
                next = h + q;
                middleH = h + 0.5 * q;
                if (Math.Abs(q) > LeastRise) slope = (table.Temperature(next, middleP, out _) - start) / q;
                flux = n * q / (ds * channel.HeatedPerimeterM);
                if (Math.Abs(q - before) <= Settled * Math.Abs(q)) break;
                before = q;
            }
            if (i == 0) momentum = local.MomentumFlux;
            gradient = local.FrictionGradient * FrictionScale;
            p = Pressure(inlet, p, ds * gradient + local.MomentumFlux - momentum);
            momentum = local.MomentumFlux;
            heat += n * (next - h);
            h = next;
            conductance += u * ds;
            cells[i] = (middleH, middleP);
        }
        return new IsothermalCoilResult(heat, h, p, conductance, cells);
    }

    private static PassageAnswer Local(Streams.StreamTable table, PassageTable? passage, FlowChannel channel, double h, double p, double mass, double slope, double flux)
    {
        if (passage is not null && flux >= 0) return passage.At(table.Locate(h, p), mass, slope, flux);
        var local = LocalTransfer.At(table.At(h, p) with { TemperatureSlope = slope }, channel, mass, flux < 0, flux, table.PseudoCriticalPressurePa);
        return new(local.Film, local.FrictionGradient, local.MomentumFlux, 0);
    }

    private double Pressure(StreamInlet inlet, double p, double loss)
    {
        if (p - loss > LeastPressureShare * inlet.PressurePa) return p - loss;
        throw new Numerics.SolveException(new Numerics.SolveReport(Numerics.SolveStatus.NoSolution, 0, loss, FormattableString.Invariant(
            $"the mixture loses more than {100 * (1 - LeastPressureShare):0} % of its {inlet.PressurePa / 1e5:0.###} bar absolute in the coil: {inlet.MassFlow * 1e3:0.###} g/s is too much for a bore of {BoreM * 1e3:0.##} mm; take a wider tube")));
    }

    private void Check()
    {
        VesselGuard.Within(BoreM, 5e-4, 0.05, "m", nameof(BoreM));
        VesselGuard.Within(OutsideDiameterM, BoreM, 0.1, "m", nameof(OutsideDiameterM));
        VesselGuard.Within(LengthM, 0.01, 100, "m", nameof(LengthM));
        VesselGuard.Within(OutsideConductancePerLength, 1e-6, 1e9, "W/(m K)", nameof(OutsideConductancePerLength));
        VesselGuard.Within(FilmScale, 1e-3, 1e3, "", nameof(FilmScale));
        VesselGuard.Within(FrictionScale, 0, 1e3, "", nameof(FrictionScale));
        VesselGuard.Within(Cells, 4, 1000, "", nameof(Cells));
        VesselGuard.Within(Settled, 0, 1e-3, "", nameof(Settled));
    }
}

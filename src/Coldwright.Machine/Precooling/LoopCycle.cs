using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Precooling;

/// <summary>
/// Refrigerant side: state points, flow and the path of temperature against enthalpy in evaporator and condenser, at given
/// pressures, superheat and liquid. Microseconds each; the searches live in <see cref="LoopSearch"/>.
/// </summary>
internal sealed class LoopCycle(LoopRefrigerant fluid, CompressorTable compressor, double subcoolingK, double suctionLineGain)
{
    // gas at its dew point: a flash could as well call it liquid, so that the outlet stays this much above it
    private readonly double _leastSuperheatK = fluid.Pure ? 1e-3 : 0.02;

    public LoopRefrigerant Fluid => fluid;
    public CompressorTable Compressor => compressor;
    public double SubcoolingK => subcoolingK;

    public LoopPoint At(double lnPe, double lnPc, double superheatK, double measure, double roomK, LoopCorrection correction)
    {
        double pe = Math.Exp(lnPe), pc = Math.Exp(lnPc);
        var outlet = fluid.Gas(fluid.Dew(lnPe) + Math.Max(superheatK, _leastSuperheatK), pe);
        double warmed = outlet.TemperatureK + suctionLineGain * Math.Max(0, roomK - outlet.TemperatureK);
        var suction = warmed > outlet.TemperatureK ? fluid.Gas(warmed, pe) : outlet;
        var (volume, work, shell) = compressor.At(lnPe, lnPc, suction.TemperatureK);
        work *= Math.Exp(correction.LnWork);
        shell += correction.ShellShare;
        double bubble = fluid.Bubble(lnPc), liquidK, liquid;
        if (measure >= 0)
        {
            liquidK = bubble - measure * subcoolingK;
            liquid = fluid.LiquidEnthalpy(liquidK, pc);
        }
        else
        {
            double at = fluid.LiquidEnthalpy(bubble, pc), share = -measure * ExpansionTable.GreatestVapour;
            liquid = at + share * (fluid.Gas(fluid.Dew(lnPc), pc).MolarEnthalpy - at);
            liquidK = fluid.Glide(lnPc, share);
        }
        double discharge = suction.MolarEnthalpy + work * (1 - shell), dewK = fluid.Dew(lnPc);
        var dew = fluid.Gas(dewK, pc);
        // a discharge that is wet stays at its dew point
        double dischargeK = discharge > dew.MolarEnthalpy
            ? fluid.GasAtEnthalpy(pc, discharge, dewK + (discharge - dew.MolarEnthalpy) / 80).TemperatureK
            : dewK;
        return new LoopPoint
        {
            LnEvaporating = lnPe, LnCondensing = lnPc, SuperheatK = superheatK, Measure = measure,
            Flow = volume * Math.Exp(correction.LnFlow) * suction.MolarDensity, TableVolumeFlow = volume, Work = work, ShellShare = shell,
            Outlet = outlet, Suction = suction, DischargeEnthalpy = discharge, DischargeK = dischargeK, LiquidEnthalpy = liquid, LiquidK = liquidK,
        };
    }

    /// <summary>Path in the evaporator from what enters to the outlet; shares are of the boiling conductance.</summary>
    public HeatPath EvaporatorPath(in LoopPoint at, double dryShare)
    {
        var path = new HeatPath();
        double pe = at.EvaporatingPa, bubbleK = fluid.Bubble(at.LnEvaporating), dewK = fluid.Dew(at.LnEvaporating);
        double bubble = fluid.LiquidEnthalpy(bubbleK, pe), dew = at.SuperheatK > _leastSuperheatK ? fluid.Gas(dewK, pe).MolarEnthalpy : at.Outlet.MolarEnthalpy;
        double first = (at.LiquidEnthalpy - bubble) / (dew - bubble);
        path.Start(at.LiquidEnthalpy, fluid.Glide(at.LnEvaporating, first));
        if (!fluid.Pure)
            for (int k = 0; k < LoopRefrigerant.Pieces; k++)
                if ((double)k / LoopRefrigerant.Pieces > first) path.Add(bubble + (dew - bubble) * k / LoopRefrigerant.Pieces, fluid.Glide(at.LnEvaporating, k), 1);
        path.Add(dew, dewK, 1);
        if (at.SuperheatK > _leastSuperheatK) path.Add(at.Outlet.MolarEnthalpy, at.Outlet.TemperatureK, dryShare);
        return path;
    }

    /// <summary>Path in the condenser from the liquid up to the discharge gas.</summary>
    public HeatPath CondenserPath(in LoopPoint at, double gasShare, double liquidShare)
    {
        var path = new HeatPath();
        double pc = at.CondensingPa, bubbleK = fluid.Bubble(at.LnCondensing), dewK = fluid.Dew(at.LnCondensing);
        double bubble = fluid.LiquidEnthalpy(bubbleK, pc), dew = fluid.Gas(dewK, pc).MolarEnthalpy, first = (at.LiquidEnthalpy - bubble) / (dew - bubble);
        path.Start(at.LiquidEnthalpy, at.LiquidK);
        if (first < 0) path.Add(bubble, bubbleK, liquidShare);
        if (!fluid.Pure)
            for (int k = 1; k < LoopRefrigerant.Pieces; k++)
                if ((double)k / LoopRefrigerant.Pieces > first) path.Add(bubble + (dew - bubble) * k / LoopRefrigerant.Pieces, fluid.Glide(at.LnCondensing, k), 1);
        if (at.DischargeEnthalpy <= dew)
        {
            path.Add(at.DischargeEnthalpy, dewK, 1);
            return path;
        }
        path.Add(dew, dewK, 1);
        // two pieces: the heat capacity of the gas falls on the way from dew point to discharge
        double middleK = 0.5 * (dewK + at.DischargeK);
        path.Add(fluid.Gas(middleK, pc).MolarEnthalpy, middleK, gasShare);
        path.Add(at.DischargeEnthalpy, at.DischargeK, gasShare);
        return path;
    }
}

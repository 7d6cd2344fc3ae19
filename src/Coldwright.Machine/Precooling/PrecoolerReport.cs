using Coldwright.Machine.Compression;
using Coldwright.Quantities;

namespace Coldwright.Machine.Precooling;

/// <summary>Makes the result of a working point that was found.</summary>
internal sealed class PrecoolerReport(PrecoolerMachine machine, LoopCycle cycle)
{
    public PrecoolerResult Of(LoopSetting setting, LoopFound found, CompressorPerformance p, int runs, double deviceError, IReadOnlyList<string> deviceSaid, PrecoolerBand? band)
    {
        var (fluid, load, roomK) = (cycle.Fluid, setting.Load, setting.RoomK);
        var (at, share, condenser) = (found.Point, found.RunShare, machine.Condenser);
        double n = p.MolarFlow, cooling = share * at.CoolingW, outletH = load.InletEnthalpy - cooling / load.MolarFlow;
        var evaporatorPath = cycle.EvaporatorPath(at, machine.Evaporator.DryShare);
        var places = new List<EvaporatorPlace>();
        ConductanceNeed.Evaporator(evaporatorPath, share * at.Flow, load, out double closest, (q, r, m) => places.Add(new EvaporatorPlace(q, r, m)));
        var condenserPath = cycle.CondenserPath(at, condenser.GasShare, condenser.LiquidShare);
        double line = n * (p.Suction.MolarEnthalpy - at.Outlet.MolarEnthalpy), rejected = n * (p.Discharge.MolarEnthalpy - at.LiquidEnthalpy), power = p.ElectricalPowerW;
        double balance = (cooling + share * (line + power - p.ShellHeatW - rejected)) / (cooling + share * power);
        double entry = PrecoolerWarnings.EntryK(fluid, at), pe = at.EvaporatingPa, pc = at.CondensingPa;
        return new PrecoolerResult
        {
            EvaporatingK = fluid.Dew(at.LnEvaporating),
            EvaporatingPa = pe,
            EvaporatorInletK = entry,
            CondensingK = fluid.Dew(at.LnCondensing),
            CondensingBubbleK = fluid.Bubble(at.LnCondensing),
            CondensingPa = pc,
            MolarFlow = n,
            MassFlow = p.MassFlow,
            RunShare = share,
            CoolingW = cooling,
            MixtureOutletK = load.Temperature(outletH),
            MixtureOutletPhases = load.PhasesAt(outletH),
            CompressorPowerW = share * power,
            FanPowerW = share * condenser.FanPowerW,
            CoefficientOfPerformance = cooling / (share * (power + condenser.FanPowerW)),
            CondenserHeatW = share * rejected,
            ShellHeatW = share * p.ShellHeatW,
            SuctionLineHeatW = share * line,
            SuperheatK = at.SuperheatK,
            SubcoolingK = Math.Max(0, at.Measure) * cycle.SubcoolingK,
            VapourBeforeExpansion = Math.Max(0, -at.Measure) * ExpansionTable.GreatestVapour,
            DischargeK = p.Discharge.TemperatureK,
            Compressor = p,
            Path =
            [
                new LoopPlace("evaporator inlet", entry, pe, at.LiquidEnthalpy), new LoopPlace("evaporator outlet", at.Outlet.TemperatureK, pe, at.Outlet.MolarEnthalpy),
                new LoopPlace("compressor suction", p.Suction.TemperatureK, pe, p.Suction.MolarEnthalpy), new LoopPlace("compressor discharge", p.Discharge.TemperatureK, pc, p.Discharge.MolarEnthalpy),
                new LoopPlace("before the expansion device", at.LiquidK, pc, at.LiquidEnthalpy),
            ],
            EvaporatorProfile = places,
            CondenserProfile = CondenserPlaces(condenserPath, n, roomK),
            EnergyBalanceError = balance,
            ExpansionFlowError = deviceError,
            EvaporatorErrorK = LoopSearch.EvaporatorErrorK(evaporatorPath, share * at.Flow, setting),
            CondenserErrorK = LoopSearch.HeldUp(at) ? 0 : LoopSearch.CondenserErrorK(condenserPath, n, setting),
            Iterations = runs,
            Band = band,
            Warnings = [.. PrecoolerWarnings.For(machine, fluid, found, load, p, closest).Concat(Spoken.All(deviceSaid)).Distinct()],
        };
    }

    private List<CondenserPlace> CondenserPlaces(HeatPath path, double flow, double roomK)
    {
        var places = new List<CondenserPlace>();
        for (int i = 0; i < path.Count; i++)
        {
            double share = path.Share(Math.Max(i, 1));
            // air that has passed this place: room temperature plus its part of the difference
            double warmed = machine.Condenser.AirCapacityWPerK(roomK) is { } c ? machine.Condenser.Effective(share, roomK) / c : 0;
            places.Add(new CondenserPlace(flow * (path.H(i) - path.H(0)), path.T(i), roomK + warmed * (path.T(i) - roomK)));
        }
        return places;
    }
}

using Coldwright.Fluids.States;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Simulation.Rating;

/// <summary>Everything at the operating temperature: states, powers, product, balances, exergy, limits.</summary>
internal sealed record OperatingPoint
{
    public required LoopSolution Solution { get; init; }
    public required LoopState Loop { get; init; }
    public required FluidState ThrottleOutlet { get; init; }
    public required PowerSplit Power { get; init; }
    public LiquidResult? Liquid { get; init; }
    public required ExergyAccount Exergy { get; init; }
    public required BalanceErrors Balance { get; init; }
    public required IReadOnlyList<LimitCheck> Limits { get; init; }
    public required IReadOnlyList<string> Warnings { get; init; }

    public static OperatingPoint Build(MachineDescription machine, LoopLayout layout, LoopSolver loop, ProductSolver? product, LoopSolution s)
    {
        double n = s.Flow, loadK = s.LoadTemperatureK, coldK = loadK - layout.Coil.DifferenceK, roomK = machine.Room.TemperatureK;
        var warnings = new List<string>();

        // states in flow order, each from its own flash
        var suction = s.Compressor.Suction;
        var discharge = s.Compressor.Discharge;
        var aftercooled = loop.State(loop.AftercooledK, loop.HighPressurePa);
        var beforePrecooler = layout.WarmExchanger is null ? aftercooled : loop.StateAtEnthalpy(loop.HighPressurePa, s.BeforePrecooler, loop.High.Temperature(s.BeforePrecooler));
        var inlet = loop.StateAtEnthalpy(loop.HighPressurePa, s.RecuperatorInlet, s.RecuperatorInletK);
        var throttleInlet = loop.StateAtEnthalpy(loop.HighPressurePa, s.ThrottleInlet, loop.High.Temperature(s.ThrottleInlet));
        var throttleOutlet = loop.StateAtEnthalpy(loop.LowPressurePa, s.ThrottleInlet, loop.Low.Temperature(s.ThrottleInlet));
        var coilOutlet = loop.State(coldK, loop.LowPressurePa);
        var lowOutlet = loop.StateAtEnthalpy(loop.SuctionPressurePa, s.RecuperatorLowOutlet, loop.Low.Temperature(s.RecuperatorLowOutlet));
        var returned = loop.StateAtEnthalpy(loop.SuctionPressurePa, s.ReturnGas, loop.Low.Temperature(s.ReturnGas));

        // product: the net cooling, if any, condenses feed gas
        double feedMol = 0, feedPrecoolW = 0;
        LiquidResult? liquid = null;
        FluidState? letDown = null, arriving = null;
        (double Enthalpy, double Entropy, double Density) leaving = default;
        if (product is not null)
        {
            arriving = product.Arriving(layout.FeedPrecooled ? layout.Precooler?.OutletTemperatureK : null);
            leaving = product.Leaving(loadK);
            letDown = product.LetDown(leaving.Enthalpy);
            double heat = arriving.MolarEnthalpy - leaving.Enthalpy;
            // at the no-load temperature the net cooling is zero to the root finder's tolerance: no product, not a trace of it
            bool reached = product.CondensingK is not { } t || loadK <= t + 1e-6;
            feedMol = heat > 0 && reached ? Math.Max(0, s.NetCoolingW) / heat : 0;
            feedPrecoolW = feedMol * (product.Compressed.MolarEnthalpy - arriving.MolarEnthalpy);
            double kg = feedMol * product.Fluid.MolarMass, collectedMol = feedMol * (1 - letDown.VapourFraction);
            liquid = new LiquidResult
            {
                Substance = product.Fluid.Name,
                CondensingPressurePa = layout.Feed!.PressurePa,
                CondensingTemperatureK = product.CondensingK,
                LiquidTemperatureK = loadK,
                RateKgPerS = kg,
                RateLPerH = feedMol / leaving.Density * 3.6e6,
                CollectedLPerH = collectedMol / product.BoilingLiquid.MolarDensity * 3.6e6,
                FlashFraction = letDown.VapourFraction,
                HeatPerKgJ = heat / product.Fluid.MolarMass,
            };
        }

        double mixturePrecoolW = layout.Precooler is null ? 0 : Math.Max(0, s.PrecoolingOfMixtureW);
        double precoolDuty = mixturePrecoolW + feedPrecoolW;
        double precoolW = layout.Precooler is { } pc ? ModelRatingSolver.PrecoolerPowerW(pc, roomK, precoolDuty) : 0;
        double fansW = layout.Aftercooler.FanPowerW + (layout.Precooler?.FanPowerW ?? 0);
        double feedW = product is null ? 0 : feedMol * product.FeedWork();
        var power = new PowerSplit(s.Compressor.ElectricalPowerW, precoolW, feedW, fansW);

        double q = s.GrossCoolingW;
        double aftercoolerW = n * (discharge.MolarEnthalpy - aftercooled.MolarEnthalpy);
        double energy = power.MainW + q + s.WarmEndLeakW - s.Compressor.ShellHeatW - aftercoolerW - s.PrecoolingOfMixtureW;
        double mass = product is null ? 0 : feedMol * (1 - letDown!.Phases.Sum(p => p.Fraction));

        var exergy = ExergyBuilder.Build(new ExergyBuilder.Streams(n, suction, discharge, aftercooled, beforePrecooler, inlet, throttleInlet,
            throttleOutlet, coilOutlet, lowOutlet, returned), s, power, machine.Room, loadK, feedMol, product, arriving, leaving, letDown, precoolDuty);
        double exergyError = (exergy.TotalW - exergy.ProductW - exergy.LossesW.Sum(l => l.Watts)) / power.TotalW;

        double molarMass = suction.MolarMass;
        var points = new List<LoopPoint>
        {
            Point("compressor suction", layout.LoopPath.Count > 0 && layout.WarmExchanger is { } w ? w.Name : layout.Recuperator.Name, suction),
            Point("compressor discharge", layout.Compressor.Name, discharge),
            Point("after the aftercooler", layout.Aftercooler.Name, aftercooled),
        };
        if (layout.WarmExchanger is { } wx) points.Add(Point("before the precooler", wx.Name, beforePrecooler));
        points.Add(Point("into the recuperator", layout.Precooler?.Name ?? layout.Aftercooler.Name, inlet));
        points.Add(Point("throttle inlet", layout.Recuperator.Name, throttleInlet));
        points.Add(Point("throttle outlet", layout.Throttle.Name, throttleOutlet));
        points.Add(Point("coil outlet", layout.Coil.Name, coilOutlet));
        points.Add(Point("out of the recuperator", layout.Recuperator.Name, lowOutlet));

        var limits = new List<LimitCheck>
        {
            Limit("discharge temperature", layout.Compressor.Name, discharge.TemperatureK, layout.Compressor.MaximumDischargeTemperatureK, "K"),
        };
        if (layout.Compressor.MaximumPressurePa is { } pmax) limits.Add(Limit("discharge pressure", layout.Compressor.Name, loop.DischargePressurePa, pmax, "Pa"));
        if (layout.Precooler is { CapacityW: { } capacity } precooler) limits.Add(Limit("precooler duty", precooler.Name, precoolDuty, capacity, "W"));
        if (suction.Phases.Count > 1 || suction.VapourFraction < 1) warnings.Add("liquid arrives at the compressor's suction: the returning mixture is not all vapour; a longer recuperator or less heavy gas is needed, liquid wrecks compressors");

        return new OperatingPoint
        {
            Solution = s,
            ThrottleOutlet = throttleOutlet,
            Loop = new LoopState
            {
                HighPressurePa = loop.HighPressurePa,
                LowPressurePa = loop.SuctionPressurePa,
                MolarFlow = n,
                MassFlow = n * molarMass,
                DischargeTemperatureK = discharge.TemperatureK,
                PrecoolingW = precoolDuty,
                RecuperatorDutyW = n * s.Exchanger.Duty,
                Composition = machine.Charge.Mixture,
                Points = points,
            },
            Power = power,
            Liquid = liquid,
            Exergy = exergy,
            Balance = new BalanceErrors(feedMol > 0 ? mass / feedMol : 0, energy / Math.Max(power.MainW, 1e-9), exergyError),
            Limits = limits,
            Warnings = warnings,
        };
    }

    private static LoopPoint Point(string name, string part, FluidState s) =>
        new(name, part, s.TemperatureK, s.PressurePa, s.MolarEnthalpy, s.MolarEntropy, s.VapourFraction, s.PhaseNames);

    private static LimitCheck Limit(string what, string part, double value, double limit, string unit) => new(what, part, value, limit, unit, value > limit);
}

using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Flow;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Machine.Recuperation;
using Coldwright.Simulation.Parts;

namespace Coldwright.Simulation.ClosedLoop;

/// <summary>Every input of a piece of hardware: what a builder can change, and what the correlations leave in doubt.</summary>
internal static class LoopInputs
{
    // Steps a builder might take: a tenth, or so many kelvin. The doubt of the hold-up is our assumption: twice the void correlation's own, since
    // small loops run below the mass flux it was made for.
    private const double Tenth = 0.1, HoldUpDoubt = 0.2;

    public static IReadOnlyList<LoopInput> Of(Hardware h, HelmholtzModel model, LoopPass at) => [.. Hardware(h), .. Charge(h, model), .. Doubts(h, at)];

    private static IEnumerable<LoopInput> Hardware(Hardware h)
    {
        var layout = h.Layout;
        string compressor = layout.Compressor.Name, recuperator = layout.Recuperator.Name, throttle = layout.Throttle.Name;
        double displacement = h.Compressor.Machine.DisplacementM3;
        yield return new($"{compressor}.displacement", "displacement of the compressor", "m3", displacement, Tenth * displacement, false, (x, d) => x with { Knobs = x.Knobs with { CompressorFlow = x.Knobs.CompressorFlow * (1 + d / displacement) } });
        double length = h.Recuperator.LengthM;
        yield return new($"{recuperator}.length", "length of the recuperator", "m", length, Tenth * length, false, (x, d) => WithRecuperator(x, r => r with { LengthM = length + d }));
        yield return Bore($"{recuperator}.high-tube", "bore of the recuperator's high-pressure tube", layout.Recuperator.HighTube!, (x, t) => WithRecuperator(x, r => r with { HighTube = t }));
        yield return Bore($"{recuperator}.low-tube", "bore of the recuperator's low-pressure tube", layout.Recuperator.LowTube!, (x, t) => WithRecuperator(x, r => r with { LowTube = t }));
        if (h.Capillary is { LengthM: { } tubeLength } tube)
        {
            yield return new($"{throttle}.capillary.length", "length of the capillary", "m", tubeLength, Tenth * tubeLength, false, (x, d) => x with { Capillary = x.Capillary! with { LengthM = tubeLength + d } }, true);
            yield return new($"{throttle}.capillary.bore", "bore of the capillary", "m", tube.BoreM, 0.05 * tube.BoreM, false, (x, d) => x with { Capillary = x.Capillary! with { BoreM = tube.BoreM + d } }, true);
        }
        if (h.Valve is { } valve)
            yield return new($"{throttle}.valve.opening", "opening of the valve", "1", valve.Opening, Tenth * valve.Opening, false, (x, d) => x with { Knobs = x.Knobs with { ThrottleFlow = x.Knobs.ThrottleFlow * (1 + d / valve.Opening) } });
        if (h.Coil is { } coil)
            yield return new($"{layout.Coil.Name}.length", "length of the coil", "m", coil.LengthM, Tenth * coil.LengthM, false, (x, d) => x with { Coil = x.Coil! with { LengthM = coil.LengthM + d } });
        else
            yield return new($"{layout.Coil.Name}.difference", "difference at the coil", "K", layout.Coil.DifferenceK, 0.5, false, (x, d) => x with { Layout = x.Layout with { Coil = x.Layout.Coil with { DifferenceK = layout.Coil.DifferenceK + d } } });
        double room = h.RoomK;
        yield return new("room.temperature", "temperature of the room", "K", room, 5, false, (x, d) => WithRoom(x, room + d));
        yield return new($"{layout.Aftercooler.Name}.approach", "approach of the aftercooler", "K", layout.Aftercooler.ApproachK, 2, false, (x, d) => x with { Layout = x.Layout with { Aftercooler = x.Layout.Aftercooler with { ApproachK = layout.Aftercooler.ApproachK + d } } });
        if (layout.WarmExchanger is { } wx)
            yield return new($"{wx.Name}.conductance", "conductance of the warm exchanger", "W/K", wx.ConductanceWPerK, Tenth * wx.ConductanceWPerK, false, (x, d) => x with { Layout = x.Layout with { WarmExchanger = wx with { ConductanceWPerK = wx.ConductanceWPerK + d } } });
        foreach (var input in Precooler(h)) yield return input;
        if (h.OilMol > 0) yield return new($"{compressor}.oil.charge", "oil in the compressor, for the gas that it dissolves", "mol", h.OilMol, Tenth * h.OilMol, false, (x, d) => x with { OilMol = h.OilMol + d });
        if (layout.ColdBox is { Layers.Count: 0 } box)
            yield return new($"{box.Name}.wall", "thickness of the insulation", "m", box.WallM, 0.02, false, (x, d) => x with { Layout = x.Layout with { ColdBox = box with { WallM = box.WallM + d } } });
        else if (layout.ColdBox is { } layered)
        {
            var outer = layered.Layers[^1];
            yield return new($"{layered.Name}.layers.{layered.Layers.Count}.thickness", "thickness of the outer layer of insulation", "m", outer.ThicknessM, 0.02, false,
                (x, d) => x with { Layout = x.Layout with { ColdBox = layered with { Layers = [.. layered.Layers.SkipLast(1), outer with { ThicknessM = outer.ThicknessM + d }], WallM = layered.WallM + d } } });
        }
        if (h.Buffer is { } buffer)
        {
            yield return new($"{layout.Buffer!.Name}.volume", "volume of the buffer", "m3", buffer.VolumeM3, Tenth * buffer.VolumeM3, false, (x, d) => x with { Buffer = x.Buffer! with { VolumeM3 = buffer.VolumeM3 + d } });
            yield return new($"{layout.Buffer.Name}.opening-pressure", "opening pressure of the buffer's valve", "Pa", buffer.SetPressurePa, 1e5, false, (x, d) => x with { Buffer = x.Buffer! with { SetPressurePa = buffer.SetPressurePa + d } });
        }
    }

    private static IEnumerable<LoopInput> Precooler(Hardware h)
    {
        if (h.Layout.Precooler is not { } part) yield break;
        if (h.Precooler is not { } pc)
        {
            yield return new($"{part.Name}.outlet-temperature", "outlet temperature of the precooler", "K", part.OutletTemperatureK, 5, false, (x, d) => x with { Layout = x.Layout with { Precooler = part with { OutletTemperatureK = part.OutletTemperatureK + d } } });
            yield break;
        }
        double displacement = pc.Compressor.DisplacementM3, evaporator = pc.Evaporator.ConductanceWPerK, condenser = pc.Condenser.ConductanceWPerK;
        yield return new($"{part.Name}.loop.displacement", "displacement of the precooler's compressor", "m3", displacement, Tenth * displacement, false, (x, d) => x with { Knobs = x.Knobs with { PrecoolerFlow = x.Knobs.PrecoolerFlow * (1 + d / displacement) } });
        yield return new($"{part.Name}.loop.evaporator-conductance", "conductance of the precooler's evaporator", "W/K", evaporator, Tenth * evaporator, false, (x, d) => x with { Knobs = x.Knobs with { PrecoolerConductance = x.Knobs.PrecoolerConductance * (1 + d / evaporator) } });
        yield return new($"{part.Name}.loop.condenser-conductance", "conductance of the precooler's condenser", "W/K", condenser, Tenth * condenser, false,
            (x, d) => x with { Precooler = x.Precooler! with { Condenser = x.Precooler.Condenser with { ConductanceWPerK = condenser + d } } });
    }

    // so much more or less of one gas; the others' amounts stay
    private static IEnumerable<LoopInput> Charge(Hardware h, HelmholtzModel model)
    {
        var mixture = h.Machine.Charge.Mixture;
        double total = 0;
        for (int i = 0; i < mixture.Names.Count; i++) total += h.ChargeMol * mixture.MoleFractions[i] * model.Substances[i].MolarMass;
        yield return new("charge.mass", "charge, its mixture unchanged", "kg", total, 0.05 * total, false, (x, d) => x with { ChargeMol = x.ChargeMol * (1 + d / total) });
        if (mixture.Names.Count < 2) yield break;
        for (int i = 0; i < mixture.Names.Count; i++)
        {
            int k = i;
            double mass = model.Substances[i].MolarMass, kg = h.ChargeMol * mixture.MoleFractions[i] * mass;
            yield return new($"charge.{mixture.Names[i]}", $"{mixture.Names[i]} in the charge", "kg", kg, Math.Min(0.02 * total, 0.3 * kg), false, (x, d) => WithAmount(x, k, d / mass));
        }
    }

    private static Hardware WithAmount(Hardware x, int k, double moles)
    {
        var m = x.Machine.Charge.Mixture;
        double total = x.ChargeMol + moles;
        double[] z = [.. m.MoleFractions.Select((f, i) => (f * x.ChargeMol + (i == k ? moles : 0)) / total)];
        return x with { ChargeMol = total, Machine = x.Machine with { Charge = x.Machine.Charge with { Mixture = new Composition(m.Names, z) } } };
    }

    private static IEnumerable<LoopInput> Doubts(Hardware h, LoopPass at)
    {
        double condensing = Together(Condensation.ShahCorrelation, MixtureCorrection.SilverBellGhalyCorrelation), boiling = Together(Boiling.GungorWintertonCorrelation, MixtureCorrection.SilverBellGhalyCorrelation);
        double friction = TwoPhaseGradient.MuellerSteinhagenHeckCorrelation.RelativeUncertainty;
        yield return Doubt("compressor-flow", "flow of the compressor", at.Compressor.FlowUncertainty, (k, d) => k with { CompressorFlow = k.CompressorFlow * (1 + d) });
        yield return Doubt("compressor-power", "power of the compressor", at.Compressor.PowerUncertainty, (k, d) => k with { CompressorPower = k.CompressorPower * (1 + d) });
        yield return Doubt("condensing-film", "film of the condensing mixture in the recuperator", condensing, (k, d) => k with { HighFilm = k.HighFilm * (1 + d) });
        yield return Doubt("boiling-film", "film of the boiling mixture in the recuperator", boiling, (k, d) => k with { LowFilm = k.LowFilm * (1 + d) });
        yield return Doubt("high-friction", "friction of the high side", friction, (k, d) => k with { HighFriction = k.HighFriction * (1 + d) });
        yield return Doubt("low-friction", "friction of the low side", friction, (k, d) => k with { LowFriction = k.LowFriction * (1 + d) });
        yield return Doubt("throttle-flow", "flow of the throttle", at.ThrottleUncertainty, (k, d) => k with { ThrottleFlow = k.ThrottleFlow * (1 + d) });
        if (h.Coil is not null) yield return Doubt("coil-film", "film of the boiling mixture in the coil", boiling, (k, d) => k with { CoilFilm = k.CoilFilm * (1 + d) });
        if (at.ColdEndLeakW > 0) yield return Doubt("leak", "heat leak of the cold box", at.LeakDeviationW / at.ColdEndLeakW, (k, d) => k with { Leak = k.Leak * (1 + d) });
        yield return Doubt("hold-up", "liquid held up, over what the void correlation says", HoldUpDoubt, (k, d) => k with { LiquidHoldUp = k.LiquidHoldUp * (1 + d) });
        if (h.Precooler is { } pc)
        {
            yield return Doubt("precooler-evaporator", "conductance of the precooler's evaporator", pc.Evaporator.RelativeUncertainty, (k, d) => k with { PrecoolerConductance = k.PrecoolerConductance * (1 + d) });
            yield return Doubt("precooler-flow", "flow of the precooler's compressor", pc.Compressor.Traits.FlowUncertainty, (k, d) => k with { PrecoolerFlow = k.PrecoolerFlow * (1 + d) });
        }
    }

    private static LoopInput Doubt(string id, string name, double sigma, Func<LoopKnobs, double, LoopKnobs> changed) =>
        new($"doubt.{id}", name, "", 1, sigma, true, (x, d) => x with { Knobs = changed(x.Knobs, d) });

    private static double Together(Correlation a, Correlation b) => Math.Sqrt(a.RelativeUncertainty * a.RelativeUncertainty + b.RelativeUncertainty * b.RelativeUncertainty);

    // the next bore at the same wall
    private static LoopInput Bore(string id, string name, Tube tube, Func<Hardware, Tube, Hardware> changed) =>
        new(id, name, "m", tube.InsideDiameterM, 1e-3, false, (x, d) => changed(x, tube with { OutsideDiameterM = tube.OutsideDiameterM + d }));

    private static Hardware WithRecuperator(Hardware x, Func<RecuperatorPart, RecuperatorPart> changed)
    {
        var part = changed(x.Layout.Recuperator);
        return x with { Layout = x.Layout with { Recuperator = part }, Recuperator = RecuperatorRater.Geometry(part) };
    }

    private static Hardware WithRoom(Hardware x, double roomK) => x with
    {
        Machine = x.Machine with { Room = x.Machine.Room with { TemperatureK = roomK } },
        RecuperatorLeak = x.RecuperatorLeak is { } leak ? leak with { EnvironmentK = roomK } : null,
        Buffer = x.Buffer is { } b ? b with { TemperatureK = roomK } : null,
    };
}

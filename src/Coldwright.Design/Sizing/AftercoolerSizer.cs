using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;
using Coldwright.Machine.Description;
using Coldwright.Machine.HeatTransfer;
using Coldwright.Quantities;
using static Coldwright.Quantities.SpokenAmount;

namespace Coldwright.Design.Sizing;

/// <summary>Bare copper tube in a fan's air that brings the discharge gas to an approach over the room. Gas films inside: where heavy gases condense the tube is a little long.</summary>
internal static class AftercoolerSizer
{
    // our assumption: a fan's air across the tube
    private const double AirSpeedMPerS = 3, DropShare = 0.02;
    private const int Pieces = 24;

    public static SizeResult Size(SizeContext c, AftercoolerPart part, SizeTarget? target)
    {
        double approach = target?.Value ?? part.ApproachK, pressure = c.Loop.Loop.HighPressurePa, hot = c.Loop.Loop.DischargeTemperatureK, cold = c.RoomK + approach;
        if (target is null) c.Said.Add("sized for the approach that the file gives; a target asks for another");
        if (!(hot > cold)) throw new ArgumentException(FormattableString.Invariant($"the discharge leaves the compressor at {hot - 273.15:0.#} °C, not warmer than the {cold - 273.15:0.#} °C asked for"), nameof(target));
        var flash = new Flash(c.Model);
        var transport = new TransportModel(c.Model);
        double[] z = c.Z;
        // a table of pieces of equal temperature fall: heat (W) and what the film needs
        var pieces = new (double MeanK, double HeatW, double Viscosity, double Conductivity, double HeatCapacity, double Density)[Pieces];
        double before = flash.TemperaturePressure(hot, pressure, z).MolarEnthalpy;
        for (int i = 0; i < Pieces; i++)
        {
            double t = hot - (hot - cold) * (i + 1) / Pieces, mean = t + 0.5 * (hot - cold) / Pieces, after = flash.TemperaturePressure(t, pressure, z).MolarEnthalpy;
            var gas = transport.Add(flash.TemperaturePressure(mean, pressure, z)).Phases[0];
            pieces[i] = (mean, c.Loop.Loop.MolarFlow * (before - after), gas.ViscosityPaS!.Value, gas.ConductivityWPerMK!.Value, gas.MolarHeatCapacity / gas.MolarMass, gas.MolarDensity * gas.MolarMass);
            before = after;
        }
        double heat = pieces.Sum(p => p.HeatW);
        var found = StockLoop.Each(c, SizeContext.Stock(0.25 * 0.0254, 0.625 * 0.0254, "ACR"), t => t.Text, tube =>
        {
            double length = 0, drop = 0, flux = c.Loop.Loop.MassFlow / tube.BoreAreaM2;
            foreach (var p in pieces)
            {
                double inside = InTube.OnePhase(flux, tube.InsideDiameterM, p.Viscosity, p.Conductivity, p.HeatCapacity), outside = ShellCooling.CrossFlow(AirSpeedMPerS, tube.OutsideDiameterM, 0.5 * (p.MeanK + c.RoomK));
                double perMetre = Math.PI / (1 / (inside * tube.InsideDiameterM) + 1 / (outside * tube.OutsideDiameterM)), piece = p.HeatW / (perMetre * (p.MeanK - c.RoomK));
                length += piece;
                drop += Machine.Flow.Friction.Churchill(flux * tube.InsideDiameterM / p.Viscosity, 1.5e-6 / tube.InsideDiameterM) * flux * flux / (2 * p.Density * tube.InsideDiameterM) * piece;
            }
            return new SizeOption
            {
                Stock = tube.Text,
                Figures = [new("length_m", "Length", length, "m"), new("drop_Pa", "Gas loses", drop, "Pa") { IsDifference = true }, new("heat_W", "Heat given to the air", heat, "W"), new("copper_kg", "Copper", RecuperatorSizer.Copper(tube, length), "kg"), new("allowed_Pa", "Tube allowed", c.AllowedPa(tube), "Pa")],
                Cut = [new(tube.Text, length, "m", c.PerMetre(tube.OutsideDiameterM, tube.WallM))],
                Keys = [("approach", FormattableString.Invariant($"{approach:0.#} K")), ("pressure-drop", FormattableString.Invariant($"{drop / 1e5:0.###} bar"))],
                WhyNot = drop > DropShare * pressure ? Spoken.Of($"the gas loses {PressureDifference(drop)} in it") : length > 60 ? FormattableString.Invariant($"{length:0} m of bare tube; take one with fins") : "",
            };
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = "aftercooler",
            Target = new("approach_K", "Gas warmer than the room's air", approach, "K") { IsDifference = true },
            TargetRemark = Spoken.Of($"{heat:0.#} W from {Celsius(hot)} down"),
            Method = FormattableString.Invariant($"bare tube across {AirSpeedMPerS} m/s of the room's air, gas inside"),
            Options = SizeContext.Sorted(found, "copper_kg"),
            Columns = ["length_m", "drop_Pa", "copper_kg"],
            Sources = ["S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300", "docs/theory/heat-transfer-and-friction.md", "docs/theory/size.md"],
            Warnings = ["a fan and fins as in any air-conditioner's condenser do the same in a tenth of the tube; the fan's air is taken as at room temperature everywhere"],
        };
    }
}

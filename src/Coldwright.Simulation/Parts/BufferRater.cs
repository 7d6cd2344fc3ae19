using Coldwright.Machine.Charge;
using Coldwright.Machine.Description;
using Coldwright.Simulation.Parts.Pictures;

namespace Coldwright.Simulation.Parts;

/// <summary>Rates the buffer: what it holds and lets past at the cooler's pressures, and how fast it fills and empties.</summary>
internal static class BufferRater
{
    // a small valve's discharge coefficient: our assumption
    private const double ValveDischarge = 0.8;
    private const int Steps = 14;

    public static PartRating Rate(PartContext c, BufferPart part)
    {
        double highPa = c.At("after the aftercooler").PressurePa, suctionPa = c.Point.LowPressurePa;
        var model = new BufferModel(Input(part, c.RoomK, Viscosity(c, suctionPa)), c.Model, c.Z);
        var r = model.Run(highPa, suctionPa, c.Cancel);
        double standstill = c.Machine.Operation.StandstillPressurePa ?? 0, warmPa = Math.Max(Math.Max(highPa, standstill), part.FullyOpenPressurePa!.Value);
        var warm = model.Run(warmPa, suctionPa, c.Cancel);
        return new PartRating
        {
            Part = part.Name,
            Kind = Kinds.Of(part),
            Method = "isothermal volume with unloading valve and bleed on the real gas",
            FluidModel = c.Loop.Model,
            Point = c.Point,
            Verdict = Verdict(c, r, warm),
            Sections =
            [
                new("inlet", "Between what pressures", new PartFigure("high_pressure_Pa", "High side at its valve", highPa, "Pa"), new("suction_pressure_Pa", "Suction", suctionPa, "Pa"),
                    new("opening_pressure_Pa", "Valve begins to open at", part.OpeningPressurePa, "Pa"), new("fully_open_pressure_Pa", "Valve fully open at", part.FullyOpenPressurePa.Value, "Pa"), new("room_temperature_K", "Tank and gas", c.RoomK, "K")),
                Answer("figures", "The buffer at the operating point", r, c),
                Answer("warm", "The buffer when the high side stands at the fully open pressure", warm, c),
            ],
            Balances = [("gas in and out of the buffer", r.MassBalanceError)],
            Pictures = [.. Pictures(c, model, part, r, warm, highPa, suctionPa, warmPa)],
            Sources = ["the model is described in the source, src/Coldwright.Machine/Charge", FormattableString.Invariant($"discharge coefficient {ValveDischarge:0.#} of the valve: our assumption")],
            Warnings = c.Told([.. r.Warnings, .. warm.Warnings.Where(w => !w.Contains("fully open", StringComparison.Ordinal)), .. part.ClosingPressurePa is null ? Array.Empty<string>() : ["the closing pressure below the opening one matters while pressures move; a steady state does not know it"]]),
        };
    }

    /// <summary>Viscosity of such a gas at room temperature, Pa s: matters little, since the flow in a bleed is turbulent.</summary>
    public const double UsualGasViscosity = 1.3e-5;

    /// <summary>The buffer that the file describes.</summary>
    public static BufferInput Input(BufferPart part, double roomK, double gasViscosityPaS)
    {
        double bore = part.ValveBoreM!.Value;
        return new BufferInput
        {
            VolumeM3 = part.VolumeM3,
            TemperatureK = roomK,
            SetPressurePa = part.OpeningPressurePa,
            FullyOpenAbovePa = part.FullyOpenPressurePa!.Value - part.OpeningPressurePa,
            ValveAreaM2 = ValveDischarge * Math.PI / 4 * bore * bore,
            Bleed = new BleedInput { BoreM = part.BleedBoreM, LengthM = part.BleedLengthM, GasViscosityPaS = gasViscosityPaS },
        };
    }

    private static double Viscosity(PartContext c, double pressurePa)
    {
        var gas = c.Flash.TemperaturePressure(c.RoomK, pressurePa, c.Z);
        return c.Transport.Viscosity(c.RoomK, gas.Phases[0].MolarDensity, c.Z).Value;
    }

    private static PartSection Answer(string id, string title, BufferResult r, PartContext c)
    {
        var figures = new List<PartFigure>
        {
            new("pressure_Pa", "Pressure in the buffer", r.PressurePa, "Pa"), new("content_kg", "Holds", r.ContentKg, "kg"), new("valve_opening", "Valve open, of full", r.ValveOpening, "1"),
            new("bypass_over_flow", "Compressed for nothing, of the flow", r.BypassFlow / c.Point.MolarFlow, "1"),
        };
        figures.Add(double.IsFinite(r.TimeConstantS) ? new("time_constant_s", "Small disturbance dies out in (to 1/e)", r.TimeConstantS, "s") : PartFigure.Word("time_constant_s", "Small disturbance dies out in", "nothing flows"));
        figures.Add(new("bleed_time_s", "Empties to a tenth, valve shut", r.BleedTimeS, "s"));
        figures.Add(new("most_kg", "Most it can take at this high side", r.ContentAtHighSide * r.ContentKg / r.Content, "kg"));
        figures.Add(new("bypass_flow_mol_s", "Through the buffer to suction", r.BypassFlow, "mol/s"));
        return new(id, title, figures, []);
    }

    private static string Verdict(PartContext c, BufferResult r, BufferResult warm)
    {
        double taken = (warm.ContentKg - r.ContentKg) * 1000;
        string here = r.ValveOpening > 0 ? FormattableString.Invariant($"At the operating point the valve stands open ({100 * r.ValveOpening:0} %) and {100 * r.BypassFlow / c.Point.MolarFlow:0.#} % of the flow is compressed for nothing.") : "At the operating point the valve is shut and the buffer stands at suction pressure.";
        string charge = c.Machine.Charge.MassKg is { } kg ? FormattableString.Invariant($", {100 * taken / 1000 / kg:0.#} % of the charge") : "";
        return FormattableString.Invariant($"{here} With the high side at the fully open pressure it takes {taken:0.#} g more out of the loop{charge}.");
    }

    private static IEnumerable<PartPicture> Pictures(PartContext c, BufferModel model, BufferPart part, BufferResult r, BufferResult warm, double highPa, double suctionPa, double warmPa)
    {
        double perMol = r.ContentKg / r.Content, top = 1.05 * warmPa;
        var runs = Enumerable.Range(0, Steps + 1).Select(i => suctionPa + (top - suctionPa) * (0.02 + 0.98 * i / Steps))
            .Concat([part.OpeningPressurePa, 1.002 * part.OpeningPressurePa, 1.01 * part.OpeningPressurePa, 1.03 * part.OpeningPressurePa]).Where(p => p > suctionPa * 1.001 && p <= top).Order()
            .Select(p => (High: p, At: model.Run(p, suctionPa, c.Cancel))).ToArray();
        var marks = new List<PictureMark> { new("operating point", PictureRole.Cooling, r.PressurePa, r.ContentKg) };
        if (warm.PressurePa > r.PressurePa + 0.02 * suctionPa) marks.Add(new("valve fully open", PictureRole.HighSide, warm.PressurePa, warm.ContentKg));
        yield return new LinePicture("content", "What the buffer holds", "Gas in the buffer against the pressure in it, on the real mixture at room temperature. The dots are where it stands at the cooler's operating point and with the valve fully open; the distance between them is what it takes out of a loop that is still warm.")
        {
            X = new("pressure in the buffer", "Pa"), Y = new("gas in the buffer", "kg"), FromZero = true,
            Lines = [new("content", "", PictureRole.Cooling, [(suctionPa, r.ContentAtSuction * perMol), .. runs.Select(p => (p.High, p.At.ContentAtHighSide * perMol))])], Marks = marks,
        };
        yield return new LinePicture("level", "Where it settles", "Pressure in the buffer once flows in and out are equal, against the pressure of the high side. Below the opening pressure the bleed holds it at suction pressure; above it the valve fills it.")
        {
            X = new("high-side pressure", "Pa"), Y = new("pressure in the buffer", "Pa"), FromZero = true,
            Lines = [new("pressure", "", PictureRole.HighSide, [.. runs.Select(p => (p.High, p.At.PressurePa))])],
            Uprights = [new("opens", PictureRole.Leak, part.OpeningPressurePa)], Marks = [new("operating point", PictureRole.Cooling, highPa, r.PressurePa)],
        };
        if (warm.Filling.Count > 2)
            yield return new LinePicture("filling", "How it fills", "Pressure in the buffer over time from suction pressure on, with the high side held at the fully open pressure.")
            {
                X = new("time", "s"), Y = new("pressure in the buffer", "Pa"), FromZero = true, Lines = [new("pressure", "", PictureRole.HighSide, [.. warm.Filling.Select(p => (p.TimeS, p.PressurePa))])],
            };
    }
}

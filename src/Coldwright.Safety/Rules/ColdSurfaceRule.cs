using Coldwright.Machine.Description;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Rules;

/// <summary>Surfaces so cold that air condenses on them.</summary>
internal static class ColdSurfaceRule
{
    // Dew point of air at 1 atm; the first liquid holds 51.5 mol % oxygen.
    private const double AirDewPointK = 81.74;
    private const string AirSource = "dew point of air at 1 atm computed with the Peng-Robinson equation and the interaction parameters of Knapp et al., DECHEMA Chemistry Data Series VI (1982): 81.74 K, first liquid 51.5 % oxygen";

    // Nitrogen boils at the dew point of air at this pressure, and at 77.355 K at 1 atm: Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361.
    private const double NitrogenAtDewPointPa = 1.65e5;
    private const double NitrogenBoilsK = 77.355;

    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        var foam = machine.PartsOf<ColdBoxPart>().Select(OrganicInsulation.In).FirstOrDefault(m => m is not null);
        var inBox = InBox(layout, inputs).OrderBy(c => c.Kelvin).ToArray();
        if (inBox.Length > 0 && foam is not null)
            yield return new("condensing-air-in-foam", Grade.Serious, inBox[0].Part, inBox[0].Kelvin, AirDewPointK, "K",
                $"nothing below the dew point of air lies in {foam}, which burns, unless the box is sealed or swept with dry nitrogen: the liquid that forms is half oxygen", AirSource,
                "air that leaks in leaves oxygen-rich liquid in the foam, which can then burn like an explosive", "sweep the box with a little dry nitrogen, or pack the coldest parts in perlite or glass wool free of oil")
            { AtLeast = true };
        else if (inBox.Length > 0)
            yield return Drips(inBox[0].Part, inBox[0].Kelvin);

        if (machine.PartsOf<FlaskPart>().FirstOrDefault() is { } flask && machine.PartsOf<FeedPart>().Any(f => f.Gas == "nitrogen"))
            yield return Drips(flask.Name, NitrogenBoilsK);
    }

    /// <summary>Whatever is below the dew point inside the box: the loop's coldest point, a vessel at low pressure, nitrogen let down before it is outside.</summary>
    private static IEnumerable<(string Part, double Kelvin)> InBox(MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        if (inputs.ColdestTemperatureK is < AirDewPointK and { } coldest)
            yield return (machine.PartsOf<ColdBoxPart>().FirstOrDefault()?.Name ?? "loop", coldest);
        if (!machine.PartsOf<FeedPart>().Any(f => f.Gas == "nitrogen")) yield break;
        if (machine.PartsOf<VesselPart>().FirstOrDefault() is { } vessel && layout.PressurePa(Zone.Feed) < NitrogenAtDewPointPa) yield return (vessel.Name, NitrogenBoilsK);
        foreach (var line in machine.Lines)
            if (line.Place == Place.ColdBox && layout.PartAt(line.To) is FlaskPart && layout.PartAt(line.From) is ValvePart) yield return ($"{line.From} to {line.To}", NitrogenBoilsK);
    }

    private static Finding Drips(string part, double kelvin) => new("condensing-air", Grade.Caution, part, kelvin, AirDewPointK, "K",
        "a bare surface below the dew point of air drips liquid with 51.5 % oxygen; no oil, foam, wood, tar or cloth under it", AirSource,
        "what soaks it up burns violently from a spark", "insulate the line against air, let drips fall on clean metal only, keep the oiled compressor and its rags away")
    { AtLeast = true };
}

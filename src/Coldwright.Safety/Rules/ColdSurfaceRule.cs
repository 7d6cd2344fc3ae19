using Coldwright.Machine.Description;
using Coldwright.Machine.Insulation;
using Coldwright.Safety.Layout;

namespace Coldwright.Safety.Rules;

/// <summary>Surfaces that condense air, and cold that burns skin.</summary>
internal static class ColdSurfaceRule
{
    // Dew point of air at 1 atm; the first liquid holds 51.5 mol % oxygen.
    private const double AirDewPointK = 81.74;
    private const string AirSource = "dew point of air at 1 atm computed with the Peng-Robinson equation and the interaction parameters of Knapp et al., DECHEMA Chemistry Data Series VI (1982)";

    // Normal boiling point, Span et al., J. Phys. Chem. Ref. Data 29 (2000) 1361.
    private const double NitrogenBoilsK = 77.355;

    public static IEnumerable<Finding> Apply(MachineLayout layout, CautionInputs inputs)
    {
        var machine = layout.Machine;
        var flask = machine.PartsOf<FlaskPart>().FirstOrDefault();
        var nitrogen = machine.PartsOf<FeedPart>().Any(f => f.Gas == "nitrogen");
        double? coldest = inputs.ColdestTemperatureK;
        if (flask is not null && nitrogen) coldest = Math.Min(coldest ?? NitrogenBoilsK, NitrogenBoilsK);
        if (coldest < AirDewPointK)
            yield return new("condensing-air", Grade.Serious, flask is not null && nitrogen ? flask.Name : "cold-box", coldest, AirDewPointK, "K",
                "no surface below the dew point of air open to air: what drips from it is half oxygen", AirSource,
                "oxygen-rich liquid soaks foam, wood, oil and cloth, which then burn violently",
                "seal the insulation against air, keep drips off anything that burns, use insulation that does not burn around the coldest parts");

        var handled = flask?.Name ?? ColdBoxContents.Crossing(machine).FirstOrDefault(c => c.Inner is VesselPart && layout.PartAt(c.Line.From) == c.Inner).Inner?.Name;
        if (handled is not null)
            yield return new("cold-burns", Grade.Caution, handled, null, null, "",
                "cold liquid and bare cold metal only with face shield, loose insulating gloves and covered skin", "common practice",
                "frostbite and blindness from splashes; skin freezes to bare metal", "wear them whenever liquid is discharged or carried");
    }
}

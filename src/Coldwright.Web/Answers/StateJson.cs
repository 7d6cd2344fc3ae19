using System.Text.Json;
using Coldwright.Design.Sizing;
using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Report;
using Coldwright.Simulation.Cooldown;
using Coldwright.Simulation.Rating;
using Coldwright.Web.Cooler;

namespace Coldwright.Web.Answers;

/// <summary>The folder as it stands, without anything computed.</summary>
internal static class StateJson
{
    public static void Write(Utf8JsonWriter w, CoolerFiles files, UnitSystem units)
    {
        var now = files.Now();
        w.WriteStartObject();
        w.WriteString("revision", now.Revision);
        w.WriteString("folder", Path.GetFileName(files.Directory));
        w.WriteString("name", now.Folder.Machine?.Name ?? Path.GetFileName(files.Directory));
        w.WriteBoolean("good", now.IsGood);
        w.WriteString("undo", files.UndoName);
        w.WriteString("redo", files.RedoName);
        w.WriteStartArray("problems");
        foreach (var problem in now.Folder.Problems) w.WriteStringValue(problem.ToString());
        w.WriteEndArray();
        w.WriteStartArray("notes");
        foreach (var note in now.Folder.Notes) w.WriteStringValue(note);
        w.WriteEndArray();
        w.WriteStartArray("variants");
        foreach (var name in Variants.Names(files.Directory)) w.WriteStringValue(name);
        w.WriteEndArray();
        if (now is { IsGood: true, Folder.Machine: { } machine }) Machine(w, now.Folder, machine);
        // A file that cannot be read has no findings, which does not mean that nothing is wrong with the cooler.
        w.WriteBoolean("findings_known", now.Folder.Machine is not null);
        FindingsJson.Write(w, Raters.Findings(now, null), units, now.Folder.Machine?.Room.PressurePa ?? 101325);
        w.WriteEndObject();
    }

    private static void Machine(Utf8JsonWriter w, MachineFolder folder, MachineDescription machine)
    {
        var mixture = machine.Charge.Mixture;
        w.WriteStartObject("mixture");
        for (var i = 0; i < mixture.Names.Count; i++) w.WriteNumber(mixture.Names[i], mixture.MoleFractions[i]);
        w.WriteEndObject();
        var held = CoolerRating.Held(machine, folder.Layout!, new RatingOptions(), out var missing);
        w.WriteString("hold", held.ToString().ToLowerInvariant());
        w.WriteStartArray("missing_for_closed");
        foreach (var key in missing) w.WriteStringValue(key.ToString());
        w.WriteEndArray();
        w.WriteStartArray("missing_for_cooldown");
        foreach (var key in CooldownSolver.Missing(machine, folder.Layout!)) w.WriteStringValue(key.ToString());
        w.WriteEndArray();
        w.WriteStartArray("shop_gases");
        foreach (var gas in folder.Shop?.GasPerKg.Keys ?? mixture.Names) w.WriteStringValue(gas);
        w.WriteEndArray();
        w.WriteStartArray("sizeable");
        foreach (var part in machine.Parts.Where(SizeTargets.CanBeSized))
        {
            w.WriteStartObject();
            w.WriteString("name", part.Name);
            w.WriteStartArray("targets");
            foreach (var target in SizeTargets.Of(part))
            {
                w.WriteStartObject();
                w.WriteString("name", target.Name);
                w.WriteString("example", target.Kind.Example);
                w.WriteEndObject();
            }
            w.WriteEndArray();
            w.WriteEndObject();
        }
        w.WriteEndArray();
        w.WriteBoolean("makes_liquid", folder.Layout is { Feed: not null, Vessel: not null });
    }
}

using Coldwright.Machine.Description;
using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Tree;
using Coldwright.Runs.Record;

namespace Coldwright.Runs.Files;

/// <summary>Checks that sensors and events sit on parts that the cooler has.</summary>
internal static class PlaceCheck
{
    public static void Check(RunDescription run, MachineDescription? machine, ProblemList problems)
    {
        if (machine is null) return;
        string[] known = [Whereabouts.Room, Whereabouts.Machine, .. machine.Parts.SelectMany(p => Ports.Of(p).Append(p.Name)).Distinct()];
        foreach (var c in run.Channels) Place(c.Place.Port, $"channel '{FileTree.Shorten(c.Name)}'", c.Line, c.FileColumn);
        foreach (var e in run.Events.Where(e => e.At.Length > 0)) Place(e.At, $"event '{RunEvent.WordOf(e.Kind)}'", e.Line, 1);

        void Place(string port, string who, int line, int column)
        {
            if (!known.Contains(port)) problems.Add(line, column, $"{who}: at: the cooler has no part or stream '{FileTree.Shorten(port)}'; {ChannelReader.Nearest(port, known)}");
        }
    }
}

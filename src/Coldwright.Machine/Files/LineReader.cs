using Coldwright.Machine.Description;
using Coldwright.Machine.Files.Keys;
using Coldwright.Machine.Files.Tree;
using Coldwright.Quantities;

namespace Coldwright.Machine.Files;

/// <summary>Reads the lines and checks that their ports exist.</summary>
internal static class LineReader
{
    private const int MostLines = 1000;

    /// <param name="root">The file.</param>
    /// <param name="parts">The parts that could be made.</param>
    /// <param name="names">The names of all parts, also of those with an unknown kind.</param>
    /// <param name="portsAreGood">True when every line joins two ports that exist.</param>
    public static IReadOnlyList<Line> Read(SectionReader root, IReadOnlyList<Part> parts, IReadOnlySet<string> names, out bool portsAreGood)
    {
        portsAreGood = root.Has("lines");
        var known = parts.ToDictionary(p => p.Name, StringComparer.Ordinal);
        var lines = new List<Line>();
        foreach (var (reader, node) in root.Sections("lines", "a line"))
        {
            if (lines.Count == MostLines)
            {
                root.Complain("lines", $"there are more than {MostLines} lines, which is the limit");
                portsAreGood = false;
                break;
            }
            portsAreGood &= TryPort(reader, "from", known, names, out var from);
            portsAreGood &= TryPort(reader, "to", known, names, out var to);
            lines.Add(new Line
            {
                From = from,
                To = to,
                Tube = reader.Tube("tube"),
                LengthM = reader.Quantity("length", 0),
                Place = Place(reader, from, to, known),
                FileLine = node.Line,
            });
        }
        return lines;
    }

    private static Place Place(SectionReader reader, string from, string to, Dictionary<string, Part> known)
    {
        if (reader.Choice("in") is { } word) return word == "cold-box" ? Description.Place.ColdBox : Description.Place.Room;
        return IsCold(from) && IsCold(to) ? Description.Place.ColdBox : Description.Place.Room;

        bool IsCold(string port) => known.TryGetValue(Ports.PartName(port), out var part) && PartWords.KindOf(part).IsCold;
    }

    /// <summary>A port with its stream written out where the part has streams; false, and reported, when it does not exist.</summary>
    private static bool TryPort(SectionReader reader, string key, Dictionary<string, Part> known, IReadOnlySet<string> names, out string port)
    {
        port = reader.Text(key);
        if (port.Length == 0) return false;
        var (name, stream) = (Ports.PartName(port), Ports.StreamName(port));
        if (!known.TryGetValue(name, out var part))
        {
            // A part whose own description is broken was reported there.
            if (!names.Contains(name)) reader.Complain(key, $"{key}: there is no part '{FileTree.Shorten(name)}'; {NearestPort(port, name, known)}");
            return false;
        }
        if (PortComplaint(part, stream, key) is { } complaint)
        {
            reader.Complain(key, $"{key}: {complaint}");
            return false;
        }
        if (stream is null && PartWords.KindOf(part).DefaultStream is { } main) port = $"{name}.{main}";
        return true;
    }

    private static string? PortComplaint(Part part, string? stream, string key)
    {
        var kind = PartWords.KindOf(part);
        var (wrong, verb) = key == "from" ? (PortDirection.End, "start") : (PortDirection.Source, "end");
        if (kind.Direction == PortDirection.None || kind.Direction == wrong)
            return $"no line can {verb} at '{part.Name}' ({kind.Word})";
        if (stream is null)
        {
            return kind.Streams.Count > 0 && kind.DefaultStream is null
                ? $"'{part.Name}' has several streams; write {string.Join(" or ", Ports.Of(part))}"
                : null;
        }
        return kind.Streams.Contains(stream) ? null : $"'{part.Name}' has no stream '{FileTree.Shorten(stream)}'; {NearestStream(part, kind, stream)}";
    }

    private static string NearestPort(string port, string name, Dictionary<string, Part> known)
    {
        var near = NearestWord.Find(port, known.Values.SelectMany(Ports.Of)).Concat(NearestWord.Find(name, known.Keys)).FirstOrDefault();
        return near is null ? $"the parts are {string.Join(", ", known.Keys)}" : $"the nearest is '{near}'";
    }

    private static string NearestStream(Part part, PartKind kind, string stream)
    {
        if (kind.Streams.Count == 0) return $"its port is its bare name, '{part.Name}'";
        var near = NearestWord.Find(stream, kind.Streams).FirstOrDefault();
        return near is null ? $"its ports are {string.Join(", ", Ports.Of(part))}" : $"the nearest port is '{part.Name}.{near}'";
    }
}

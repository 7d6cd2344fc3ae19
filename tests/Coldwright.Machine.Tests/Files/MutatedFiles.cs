using System.Diagnostics;
using System.Text;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

/// <summary>Ten thousand wrecked machine files: the reader answers with a machine or with problems, never with an exception.</summary>
public sealed class MutatedFiles
{
    private const int Count = 10_000;
    private const int Seed = 20260314;

    private static readonly string[] _nasty =
    [
        "1e999", "-1e308", "NaN", "∞", "0", "-0", "99999999999999999999", "1/0", "-273.16 °C", "null", "~", "[", "]", "{", "}", "{}", "[]", ":", "- ", "#", "\"", "'",
        "&a", "*a", "!!binary", "!<tag:x>", "|", ">", "%YAML 9.9", "---", "...", "? ", "\t", "\0", "\uFEFF", "\\ud800", "\"\\ud800\"", "\"\\U00110000\"", "\"\\xZZ\"", "<<", "=", "@", "`", "bar", "barg", "°C", ".high", "recuperator.high",
    ];

    [Fact]
    public void NeverThrow()
    {
        var random = new Random(Seed);
        var sources = new[] { Examples.Workshop, File.ReadAllText(Examples.Folder("leaky-box", "machine.yaml")), StarterText.Machine };
        var good = 0;
        for (int i = 0; i < Count; i++)
        {
            var bytes = Mutate(sources[i % sources.Length], random);
            var problems = new ProblemList("machine.yaml");
            try
            {
                if (FileText.Decode(bytes, problems) is not { } text)
                {
                    Assert.False(problems.IsEmpty);
                    continue;
                }
                var read = MachineFolderReader.ReadTexts(text);
                Assert.Equal(read.Machine is null, !read.IsGood);
                Assert.All(read.Problems, p => Assert.False(string.IsNullOrWhiteSpace(p.Message)));
                if (read.IsGood) good++;
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                Assert.Fail($"file {i}: {e}\n{Encoding.UTF8.GetString(bytes)}");
            }
        }
        // A few mutations land in remarks and leave a good file; if all or none did, this test would test nothing.
        Assert.InRange(good, 10, Count / 2);
    }

    private static byte[] Mutate(string source, Random random)
    {
        var lines = source.Split('\n').ToList();
        var rounds = random.Next(1, 4);
        for (int r = 0; r < rounds; r++)
        {
            var at = random.Next(lines.Count);
            switch (random.Next(9))
            {
                case 0: lines.RemoveAt(at); break;
                case 1: lines.Insert(at, lines[random.Next(lines.Count)]); break;
                case 2: lines[at] = SwapWords(lines[at], random); break;
                case 3: lines[at] = ReplaceNumber(lines[at], random); break;
                case 4: lines[at] = lines[at].Insert(random.Next(lines[at].Length + 1), _nasty[random.Next(_nasty.Length)]); break;
                case 5: lines[at] = lines[at][..random.Next(lines[at].Length + 1)]; break;
                case 6: lines[at] = new string(' ', random.Next(12)) + lines[at].TrimStart(); break;
                case 7: lines.RemoveRange(at, random.Next(lines.Count - at)); break;
                default: (lines[at], lines[^1]) = (lines[^1], lines[at]); break;
            }
            if (lines.Count == 0) lines.Add("");
        }
        var bytes = Encoding.UTF8.GetBytes(string.Join('\n', lines));
        if (bytes.Length == 0 || random.Next(3) > 0) return bytes;
        for (int flips = random.Next(1, 5); flips > 0; flips--) bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        return bytes;
    }

    private static string SwapWords(string line, Random random)
    {
        var words = line.Split(' ');
        var (a, b) = (random.Next(words.Length), random.Next(words.Length));
        (words[a], words[b]) = (words[b], words[a]);
        return string.Join(' ', words);
    }

    private static string ReplaceNumber(string line, Random random)
    {
        var start = line.IndexOfAny("0123456789".ToCharArray());
        if (start < 0) return line;
        var end = start;
        while (end < line.Length && (char.IsAsciiDigit(line[end]) || line[end] == '.')) end++;
        return line[..start] + _nasty[random.Next(9)] + line[end..];
    }
}

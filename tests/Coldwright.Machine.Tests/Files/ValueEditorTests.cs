using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Editing;

namespace Coldwright.Machine.Tests.Files;

/// <summary>Values are changed where they stand; nothing else in the file moves.</summary>
public class ValueEditorTests
{
    private const string Text = """
        # a cooler
        name: one   # mine

        parts:
          pipe:              # of copper
            kind: recuperator
            length: 16 m     # measured
            capillary: {bore: 0.9 mm, length: 1.7 m}   # rolled up

            # the end of the pipe
          coil: {kind: coil, length: 3 m}
        lines:
          - {from: pipe, to: coil, length: 1 m}
          - from: coil
            to: pipe.low
        charge:
          mixture: "nitrogen 0.4, methane 0.6"

        """;

    public static TheoryData<string> Examples => [.. Directory.EnumerateDirectories(Path.Combine(Root, "examples")).Select(d => Path.GetFileName(d)!)];

    private static string Root
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coldwright.slnx"))) folder = folder.Parent;
            return folder!.FullName;
        }
    }

    [Theory]
    [InlineData("parts/pipe/length", "20 m", "    length: 16 m     # measured", "    length: 20 m     # measured")]
    [InlineData("name", "another", "name: one   # mine", "name: another   # mine")]
    [InlineData("parts/pipe/capillary/bore", "1 mm", "{bore: 0.9 mm,", "{bore: 1 mm,")]
    [InlineData("lines/0/length", "2 m", "to: coil, length: 1 m}", "to: coil, length: 2 m}")]
    [InlineData("lines/1/to", "pipe.high", "    to: pipe.low", "    to: pipe.high")]
    [InlineData("charge/mixture", "nitrogen 0.5, methane 0.5", "\"nitrogen 0.4, methane 0.6\"", "\"nitrogen 0.5, methane 0.5\"")]
    [InlineData("name", "a: b # c", "name: one   # mine", "name: \"a: b # c\"   # mine")]
    [InlineData("parts/coil/length", "3, 4", "length: 3 m}", "length: \"3, 4\"}")]
    [InlineData("name", "say \"no\" \\ twice", "name: one ", "name: say \"no\" \\ twice ")]
    public void OnlyTheValueChanges(string place, string value, string before, string after)
    {
        Assert.Contains(before, Text, StringComparison.Ordinal);
        var changed = ValueEditor.Set(Text, place, value);
        Assert.Equal(Text.Replace(before, after, StringComparison.Ordinal), changed);
        Assert.Equal(value, ValueEditor.Find(changed, place));
    }

    [Theory]
    [InlineData("parts/pipe/coil-diameter", "200 mm", "# rolled up\n", "# rolled up\n    coil-diameter: 200 mm\n")]
    [InlineData("parts/coil/tube", "1/4 in ACR", "length: 3 m}", "length: 3 m, tube: 1/4 in ACR}")]
    [InlineData("charge/mass", "300 g", "methane 0.6\"\n", "methane 0.6\"\n  mass: 300 g\n")]
    [InlineData("parts/pipe/valve/kv", "0.01", "# rolled up\n", "# rolled up\n    valve:\n      kv: 0.01\n")]
    public void AMissingKeyIsAddedToItsGroupAndTakenOutAgain(string place, string value, string before, string after)
    {
        var changed = ValueEditor.Set(Text, place, value);
        Assert.Equal(Text.Replace(before, after, StringComparison.Ordinal), changed);
        if (place.Split('/').Length <= 3) Assert.Equal(Text, ValueEditor.Set(changed, place, null));
    }

    [Fact]
    public void LineEndsStayAsTheyWere()
    {
        var windows = Text.Replace("\n", "\r\n", StringComparison.Ordinal);
        Assert.Equal(ValueEditor.Set(Text, "charge/mass", "1 kg").Replace("\n", "\r\n", StringComparison.Ordinal), ValueEditor.Set(windows, "charge/mass", "1 kg"));
        Assert.Equal(windows, ValueEditor.Set(ValueEditor.Set(windows, "charge/mass", "1 kg"), "charge/mass", null));
        Assert.Equal(ValueEditor.Set(Text, "parts/pipe/length", "5 m").Replace("\n", "\r\n", StringComparison.Ordinal), ValueEditor.Set(windows, "parts/pipe/length", "5 m"));
    }

    [Fact]
    public void AnEmptyValueIsFilled() => Assert.Equal("a:\n  b: 3 m   # later\n  c: x\n", ValueEditor.Set("a:\n  b:   # later\n  c: x\n", "a/b", "3 m"));

    [Theory]
    [InlineData("machinery/pump/length", "1 m")]
    [InlineData("lines/7/length", "1 m")]
    [InlineData("parts/pipe", "1 m")]
    [InlineData("name", "")]
    [InlineData("name", "two\nlines")]
    [InlineData("lines/1/from", null)]
    public void WhatCannotBeIsRefused(string place, string? value) => Assert.Throws<ArgumentException>(() => ValueEditor.Set(Text, place, value));

    [Fact]
    public void ABrokenFileIsRefused() => Assert.Throws<ArgumentException>(() => ValueEditor.Set(": : {", "name", "x"));

    /// <summary>Every field of every example: written as it stands nothing changes; written otherwise only its line does; written back all is as before.</summary>
    [Theory]
    [MemberData(nameof(Examples))]
    public void EveryFieldOfTheExamplesGoesThereAndBack(string example)
    {
        var text = File.ReadAllText(Path.Combine(Root, "examples", example, "machine.yaml"));
        var fields = MachineForm.Of(text).SelectMany(s => s.Fields).Where(f => f is { IsEditable: true, Value: not null }).ToArray();
        Assert.InRange(fields.Length, 20, 2000);
        foreach (var field in fields)
        {
            Assert.Equal(text, ValueEditor.Set(text, field.Place, field.Value));
            var changed = ValueEditor.Set(text, field.Place, "something, else: {odd} # here");
            var (before, after) = (text.Split('\n'), changed.Split('\n'));
            Assert.Equal(before.Length, after.Length);
            Assert.Single(before.Zip(after), p => p.First != p.Second);
            // Back again, in quotation marks now: the same cooler.
            Assert.Equal(field.Value, ValueEditor.Find(ValueEditor.Set(changed, field.Place, field.Value), field.Place));
        }
    }

    /// <summary>What the form can add is known to the reader: no problem speaks of an unknown key.</summary>
    [Fact]
    public void KeysThatTheFormOffersAreKnownToTheReader()
    {
        var text = File.ReadAllText(Path.Combine(Root, "examples", "workshop", "machine.yaml"));
        foreach (var field in MachineForm.Of(text).SelectMany(s => s.Fields).Where(f => f is { IsEditable: true, Value: null }))
        {
            var value = field.Choices.Count > 0 ? field.Choices[0] : field.Example == "" ? "1" : field.Example;
            var folder = MachineFolderReader.ReadTexts(ValueEditor.Set(text, field.Place, value));
            Assert.DoesNotContain(folder.Problems, p => p.Message.Contains("has no key", StringComparison.Ordinal));
        }
    }
}

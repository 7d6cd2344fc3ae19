using System.Text;
using Coldwright.Web.Cooler;

namespace Coldwright.Web.Tests;

/// <summary>The folder between page and editor: nothing is lost, whoever writes when.</summary>
public sealed class CoolerFilesTests : IDisposable
{
    private const string Place = "parts/recuperator/length";

    private readonly CoolerCopy _cooler = new();
    private readonly CoolerFiles _files;

    public CoolerFilesTests() => _files = new(_cooler.Path);

    [Fact]
    public void AnEditElsewhereInTheFileIsKept()
    {
        Assert.True(_files.Now().IsGood);
        _cooler.Machine = _cooler.Machine.Replace("approach: 6 K", "approach: 8 K", StringComparison.Ordinal);
        Assert.True(_files.Edit([new Change(Place, "16 m", "20 m")]).IsWritten);
        Assert.Contains("approach: 8 K", _cooler.Machine, StringComparison.Ordinal);
        Assert.Contains("length: 20 m", _cooler.Machine, StringComparison.Ordinal);
    }

    [Fact]
    public void AnEditOfTheSameValueClashes()
    {
        _cooler.Machine = _cooler.Machine.Replace("length: 16 m", "length: 18 m", StringComparison.Ordinal);
        var outcome = _files.Edit([new Change(Place, "16 m", "20 m")]);
        Assert.Equal(new Clash(Place, "20 m", "18 m"), Assert.Single(outcome.Clashes));
        Assert.Contains("length: 18 m", _cooler.Machine, StringComparison.Ordinal);
        // Both wanted the same: nothing to decide.
        Assert.True(_files.Edit([new Change(Place, "16 m", "18 m")]).IsWritten);
    }

    [Fact]
    public void AStepBackTakesOnlyItsOwnValueWhenTheFileHasChangedSince()
    {
        Assert.True(_files.Edit([new Change(Place, "16 m", "20 m")]).IsWritten);
        _cooler.Machine = _cooler.Machine.Replace("approach: 6 K", "approach: 8 K", StringComparison.Ordinal);
        Assert.True(_files.Undo().IsWritten);
        Assert.Contains("length: 16 m", _cooler.Machine, StringComparison.Ordinal);
        Assert.Contains("approach: 8 K", _cooler.Machine, StringComparison.Ordinal);
        Assert.True(_files.Redo().IsWritten);
        _cooler.Machine = _cooler.Machine.Replace("length: 20 m", "length: 21 m", StringComparison.Ordinal);
        Assert.Equal("21 m", Assert.Single(_files.Undo().Clashes).Theirs);
        Assert.Contains("length: 21 m", _cooler.Machine, StringComparison.Ordinal);
    }

    [Fact]
    public void ManyStepsGoBackToTheLetter()
    {
        var before = _cooler.Machine;
        foreach (var i in Enumerable.Range(17, 9)) Assert.True(_files.Edit([new Change(Place, $"{i - 1} m", $"{i} m")]).IsWritten);
        Assert.True(_files.Edit([new Change("charge/release-height", "0.9 m", null)]).IsWritten);
        Assert.True(_files.Edit([new Change("parts/flask/material-that-is-not", null, "x")]).Problems.Count > 0);
        while (_files.UndoName is not null) Assert.True(_files.Undo().IsWritten);
        Assert.Equal(before, _cooler.Machine);
    }

    [Fact]
    public void WhatAnotherProgramSavesInTheSameMomentIsPutBack()
    {
        var file = new MachineFile(_cooler.MachinePath);
        var read = file.Bytes()!;
        _cooler.Machine += "# saved meanwhile\n";
        var theirs = _cooler.Machine;
        Assert.False(file.Replace("name: mine\n", read));
        Assert.Equal(theirs, _cooler.Machine);
        Assert.Equal(["machine.yaml", "shop.yaml"], Directory.EnumerateFileSystemEntries(_cooler.Path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void MarkAndLineEndsOfAWindowsEditorStay()
    {
        var windows = Encoding.UTF8.GetPreamble().Concat(Encoding.UTF8.GetBytes(_cooler.Machine.ReplaceLineEndings("\r\n"))).ToArray();
        File.WriteAllBytes(_cooler.MachinePath, windows);
        Assert.True(_files.Edit([new Change(Place, "16 m", "17 m")]).IsWritten);
        Assert.Equal(Encoding.UTF8.GetString(windows).Replace("length: 16 m", "length: 17 m", StringComparison.Ordinal), Encoding.UTF8.GetString(File.ReadAllBytes(_cooler.MachinePath)));
    }

    [Fact]
    [System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
    public void TheFilesRightsStay()
    {
        const UnixFileMode mode = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead;
        File.SetUnixFileMode(_cooler.MachinePath, mode);
        Assert.True(_files.Edit([new Change(Place, "16 m", "17 m")]).IsWritten);
        Assert.Equal(mode, File.GetUnixFileMode(_cooler.MachinePath));
    }

    [Fact]
    public async Task ManyHandsWriteWithoutLosingALine()
    {
        // Each hand has a place of its own; every value must be there in the end.
        string[] places = ["room/height", "room/floor-area", "charge/mass", "parts/aftercooler/fan-power"];
        var written = await Task.WhenAll(places.Select(place => Task.Run(() =>
        {
            var was = Machine.Files.Editing.ValueEditor.Find(_files.Now().Text!, place)!;
            var unit = was[was.IndexOf(' ', StringComparison.Ordinal)..];
            for (var i = 1; i <= 15; i++)
            {
                Assert.True(_files.Edit([new Change(place, was, $"{i}{unit}")]).IsWritten);
                was = $"{i}{unit}";
            }
            return was;
        })));
        foreach (var (place, value) in places.Zip(written)) Assert.Equal(value, Machine.Files.Editing.ValueEditor.Find(_cooler.Machine, place));
        Assert.True(_files.Now().IsGood);
    }

    public void Dispose() => _cooler.Dispose();
}

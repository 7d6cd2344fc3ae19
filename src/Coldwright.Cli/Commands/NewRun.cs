using System.Globalization;
using Coldwright.Runs;
using Coldwright.Runs.Live;

namespace Coldwright.Cli.Commands;

/// <summary>The folder of a run that is about to be recorded.</summary>
/// <param name="cooler">The cooler's folder.</param>
/// <param name="name">Name of the run.</param>
/// <param name="like">Folder of an earlier run whose channels are taken; null for none.</param>
internal sealed class NewRun(string cooler, string name, string? like)
{
    private readonly DateTime _start = DateTime.Now;

    /// <summary>Its folder: <c>runs/DATE-NAME</c>.</summary>
    public string Folder => Path.Combine(cooler, "runs", $"{_start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}-{name.Replace(' ', '-')}");
    /// <summary>The log in it.</summary>
    public string LogFile => Path.Combine(Folder, "log.csv");
    /// <summary>Text of the earlier run's description; null for none.</summary>
    public string? Earlier { get; private set; }
    /// <summary>What is to be done when the recording has ended.</summary>
    public string WhatNext => Earlier is null ? $"Say in {RunImporter.RunFile} which column is which sensor, and note what you did as events; then 'import'." : $"Note what you did as events in {RunImporter.RunFile}; then 'import'.";

    /// <summary>Refuses what cannot be recorded into.</summary>
    public void Check()
    {
        if (!Directory.Exists(cooler)) throw new InputException(cooler, "there is no such folder; give the cooler's");
        if (like is not null && !File.Exists(Path.Combine(like, RunImporter.RunFile))) throw new InputException("--like", $"'{Faces.Shorten(like)}' holds no {RunImporter.RunFile}");
        if (like is not null) Earlier = File.ReadAllText(Path.Combine(like, RunImporter.RunFile));
        if (name.AsSpan().IndexOfAny(Path.GetInvalidFileNameChars()) >= 0 || name.Length is 0 or > 60) throw new InputException("--name", $"'{Faces.Shorten(name)}' cannot be part of a folder's name");
        if (Directory.Exists(Folder)) throw new InputException("--name", $"{Folder} is already there; give the run another name");
    }

    /// <summary>Makes the folder with its description.</summary>
    /// <param name="column">Column of the channel to fill in, when there is no earlier run.</param>
    public void Make(string column = "c1")
    {
        SafeFile.MakeFolder(Folder);
        File.WriteAllText(Path.Combine(Folder, RunImporter.RunFile), NewRunText.Of(name, _start, Earlier, column));
    }

    /// <summary>Takes the folder away again: nothing came of it.</summary>
    public void TakeBack()
    {
        File.Delete(LogFile);
        File.Delete(Path.Combine(Folder, RunImporter.RunFile));
        Directory.Delete(Folder);
    }
}

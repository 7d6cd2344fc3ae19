using Coldwright.Machine.Files;

namespace Coldwright.Web.Cooler;

/// <summary>A value to be changed.</summary>
/// <param name="Place">Keys from the root, joined by <c>/</c>.</param>
/// <param name="Was">What the person saw there; null when the key was not there.</param>
/// <param name="Value">What is to stand there; null to take the key out.</param>
internal sealed record Change(string Place, string? Was, string? Value);

/// <summary>A value that is no longer what the person saw.</summary>
/// <param name="Place">Where.</param>
/// <param name="Mine">What the person wants there.</param>
/// <param name="Theirs">What the file says by now; null when the key is gone.</param>
internal sealed record Clash(string Place, string? Mine, string? Theirs);

/// <summary>What became of a change to the file.</summary>
/// <param name="Problems">Why it was not written; empty when it was or when it clashed.</param>
/// <param name="Clashes">What the file says otherwise by now; nothing was written then.</param>
internal sealed record EditOutcome(IReadOnlyList<FileProblem> Problems, IReadOnlyList<Clash> Clashes)
{
    public static EditOutcome Written { get; } = new([], []);

    public bool IsWritten => Problems.Count == 0 && Clashes.Count == 0;

    public static EditOutcome Refused(string message) => new([new FileProblem(MachineFolderReader.MachineFile, 0, 0, message)], []);
}

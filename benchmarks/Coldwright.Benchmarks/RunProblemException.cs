namespace Coldwright.Benchmarks;

/// <summary>A blind record that the importer refused.</summary>
internal sealed class RunProblemException(string message) : Exception(message);

using Coldwright.Runs.Record;

namespace Coldwright.Runs.Repair;

/// <summary>The rows that are kept and when they were written.</summary>
/// <param name="Rows">Index of each kept row in the log.</param>
/// <param name="TimesS">Its time, s from the first kept row.</param>
/// <param name="FirstStamp">Time of the first kept row as written.</param>
/// <param name="StepS">Usual time from row to row, s.</param>
/// <param name="Faults">What was found.</param>
internal sealed record RowTimes(int[] Rows, double[] TimesS, double FirstStamp, double StepS, IReadOnlyList<Fault> Faults);

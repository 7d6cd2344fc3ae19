namespace Coldwright.Machine.Precooling;

/// <summary>What brings the loop's tables of compressor and expansion device to what the models themselves answer at the solution.</summary>
/// <param name="LnFlow">ln of the factor on the compressor's volume flow.</param>
/// <param name="LnWork">ln of the factor on its electrical work per mole.</param>
/// <param name="ShellShare">Added to the share of the electrical power that the shell gives to the room.</param>
/// <param name="LnDevice">ln of the factor on the flow of the expansion device.</param>
internal readonly record struct LoopCorrection(double LnFlow, double LnWork, double ShellShare, double LnDevice);

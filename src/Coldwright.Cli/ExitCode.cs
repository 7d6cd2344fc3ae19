namespace Coldwright.Cli;

/// <summary>What a command's end says to the shell.</summary>
public static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;
    /// <summary>The answer is no: a limit is broken, or there is no solution.</summary>
    public const int No = 1;
    /// <summary>The input is wrong.</summary>
    public const int BadInput = 2;
    /// <summary>A defect of the program (EX_SOFTWARE of BSD's sysexits.h).</summary>
    public const int Defect = 70;
    /// <summary>Stopped by Ctrl-C (128 + SIGINT, the shells' convention).</summary>
    public const int Stopped = 130;
}

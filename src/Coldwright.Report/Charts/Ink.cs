namespace Coldwright.Report.Charts;

/// <summary>What a colour stands for; the shades live in <see cref="ChartStyle"/>, one set for light and one for dark pages.</summary>
public enum Ink
{
    /// <summary>Text and neutral marks.</summary>
    Plain,
    /// <summary>High-pressure stream (warm).</summary>
    High,
    /// <summary>Low-pressure stream (cold).</summary>
    Low,
    /// <summary>Cooling power and what it makes.</summary>
    Cooling,
    /// <summary>Heat leak.</summary>
    Leak,
    /// <summary>The second model.</summary>
    Second,
    /// <summary>Work lost.</summary>
    Loss,
}

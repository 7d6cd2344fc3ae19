using Coldwright.Machine.Flow;

namespace Coldwright.Machine.ColdVessel;

/// <summary>How condensate of the upper turns slows condensation on the lower ones.</summary>
public enum RowRule
{
    /// <summary>Mean over n rows n^(-1/6) of the first: condensate drips and splashes (Kern).</summary>
    Kern,
    /// <summary>Mean over n rows n^(-1/4) of the first: condensate falls as an unbroken sheet (Nusselt, Jakob); the low side.</summary>
    Nusselt,
    /// <summary>No correction: each turn as if alone.</summary>
    None,
}

/// <summary>Row correction of film condensation on horizontal tubes below one another.</summary>
public static class RowCorrection
{
    /// <summary>Source and uncertainty: half the distance between the two rules at ten rows.</summary>
    public static Correlation Correlation { get; } = new(
        "Row correction of Kern (1958), against Nusselt (1916) and Jakob (1949)",
        "D. Q. Kern, AIChE J. 4, 1958, 157-160; W. Nusselt, Z. VDI 60, 1916, 569; M. Jakob, Heat Transfer I, 1949; exponents from memory",
        0.10,
        "plain horizontal tubes in a vertical tier, gravity-drained, little vapour velocity");

    /// <summary>Mean coefficient of n rows over that of a single tube: n^(-1/6), n^(-1/4) or 1.</summary>
    /// <param name="rows">Rows below one another, at least 1.</param>
    /// <param name="rule">Which rule.</param>
    /// <returns>Dimensionless, above 0 and at most 1.</returns>
    /// <remarks>Sources: <see cref="Correlation"/>.</remarks>
    public static double Mean(double rows, RowRule rule)
    {
        if (!(rows >= 1) || !double.IsFinite(rows)) throw new ArgumentException($"rows is {rows}; it must be finite and at least 1 (dimensionless)", nameof(rows));
        return Math.Pow(rows, -Exponent(rule));
    }

    /// <summary>Coefficient of the n-th row from the top over that of a single tube: n^(1-e) - (n-1)^(1-e), so that the mean of n rows is n^(-e).</summary>
    /// <param name="row">Row counted from 1 at the top; parts of a row (a helix) are allowed, below 1 counts as 1.</param>
    /// <param name="rule">Which rule.</param>
    /// <returns>Dimensionless, above 0 and at most 1.</returns>
    /// <remarks>Sources: <see cref="Correlation"/>; follows from the means.</remarks>
    public static double OfRow(double row, RowRule rule)
    {
        if (double.IsNaN(row)) throw new ArgumentException("row is not a number", nameof(row));
        if (row <= 1 || rule == RowRule.None) return 1;
        double power = 1 - Exponent(rule);
        return Math.Pow(row, power) - Math.Pow(row - 1, power);
    }

    private static double Exponent(RowRule rule) => rule switch
    {
        RowRule.Kern => 1.0 / 6,
        RowRule.Nusselt => 0.25,
        _ => 0,
    };
}

using System.Text.Json;
using Coldwright.Fluids.Substances;

namespace Coldwright.Fluids.EquationsOfState.MultiFluid;

/// <summary>Reads a term set in the layout of data/fluids/README.md.</summary>
internal static class ResidualTermsJson
{
    public static ResidualTerms Read(JsonElement residual)
    {
        var power = EmbeddedJson.Section(residual, "power");
        var doubled = EmbeddedJson.Section(residual, "double_exponential");
        var gaussian = EmbeddedJson.Section(residual, "gaussian");
        var gerg = EmbeddedJson.Section(residual, "gerg");
        var na = EmbeddedJson.Section(residual, "non_analytic");
        var pn = Numbers(power, "n");
        var dn = Numbers(doubled, "n");
        var g = Numbers(power, "g");
        if (g.Length == 0) g = Filled(pn.Length, 1);
        var gn = Numbers(gaussian, "n");
        var kn = Numbers(gerg, "n");
        double[] zeroG = Filled(gn.Length, 0), zeroK = Filled(kn.Length, 0);
        return new ResidualTerms(
            new PowerTerms([.. pn, .. dn], [.. Whole(power, "d"), .. Whole(doubled, "d")], [.. Numbers(power, "t"), .. Numbers(doubled, "t")],
                [.. Whole(power, "l"), .. Whole(doubled, "l")], [.. g, .. Filled(dn.Length, 1)], [.. Filled(pn.Length, 0), .. Numbers(doubled, "m")]),
            new GaussianTerms([.. gn, .. kn], [.. Whole(gaussian, "d"), .. Whole(gerg, "d")], [.. Numbers(gaussian, "t"), .. Numbers(gerg, "t")],
                [.. Numbers(gaussian, "eta"), .. Numbers(gerg, "eta")], [.. Numbers(gaussian, "epsilon"), .. Numbers(gerg, "epsilon")],
                [.. Numbers(gaussian, "beta"), .. zeroK], [.. Numbers(gaussian, "gamma"), .. zeroK],
                [.. zeroG, .. Numbers(gerg, "beta")], [.. zeroG, .. Numbers(gerg, "gamma")]),
            na is null ? NonAnalyticTerms.None : new NonAnalyticTerms(Numbers(na, "n"), Numbers(na, "a"), Numbers(na, "b"), Numbers(na, "beta"),
                Numbers(na, "A"), Numbers(na, "B"), Numbers(na, "C"), Numbers(na, "D")));
    }

    private static double[] Numbers(JsonElement? parent, string key) => EmbeddedJson.Numbers(parent, key);

    private static int[] Whole(JsonElement? parent, string key) => EmbeddedJson.Numbers(parent, key).Select(v =>
        v == Math.Floor(v) ? (int)v : throw new InvalidDataException($"exponent {key} = {v} is not a whole number")).ToArray();

    private static double[] Filled(int count, double value)
    {
        var a = new double[count];
        Array.Fill(a, value);
        return a;
    }
}

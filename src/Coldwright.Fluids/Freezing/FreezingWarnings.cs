using Coldwright.Fluids.EquationsOfState;

namespace Coldwright.Fluids.Freezing;

/// <summary>What a person must be told about solid fugacities, in words.</summary>
internal static class FreezingWarnings
{
    /// <summary>ln of the fugacity ratio at the triple point above which liquid and solid are said not to fit.</summary>
    private const double MismatchToTell = 0.05;

    public static IEnumerable<string> Of(HelmholtzModel model, SolidFugacity solid)
    {
        for (int i = 0; i < model.Count; i++)
        {
            string name = model.Substances[i].Name;
            if (solid.ExtrapolatedBelow(i) > 0)
                yield return FormattableString.Invariant($"the {model.Name} model has no liquid {name} below {solid.ExtrapolatedBelow(i):0.0} K; its fugacity there is extrapolated with a constant heat of vaporisation");
            double mismatch = solid.TripleMismatch(i);
            if (Math.Abs(mismatch) > MismatchToTell)
                yield return FormattableString.Invariant($"the {model.Name} model's liquid {name} has {Math.Exp(mismatch):0.00} times the published fugacity at its triple point; its freezing out of liquids is off by that factor, out of gas it is not");
        }
    }
}

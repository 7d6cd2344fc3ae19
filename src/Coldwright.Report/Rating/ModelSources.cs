namespace Coldwright.Report.Rating;

/// <summary>What stands behind each model, for the foot of a report.</summary>
internal static class ModelSources
{
    /// <summary>One sentence with the publications.</summary>
    public static string Of(string model) => model switch
    {
        "reference" => "reference model: published Helmholtz equation of each substance, joined by the reducing and departure functions of O. Kunz and W. Wagner, J. Chem. Eng. Data 57 (2012) 3032; the paper of each substance and pair is named in data/fluids and data/pairs.",
        "cubic" => "cubic model: D.-Y. Peng and D. B. Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59, with volume translation; pair parameters and their publications are in data/pairs.",
        _ => $"{model} model",
    };
}

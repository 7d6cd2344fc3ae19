namespace Coldwright.Fluids.Transport;

/// <summary>The methods used for mixtures.</summary>
internal static class TransportMethods
{
    public static TransportMethod MixtureViscosity { get; } = new("viscosity by residual entropy scaling", "Yang, Xiao, Thol, Richter, Bell, Int. J. Thermophys. 43 (2022) 183", 8.0,
        "68 % of the authors' data for 351 mixtures lie within");

    public static TransportMethod MixtureConductivity { get; } = new("conductivity by residual entropy scaling", "Yang, Kim, May, Bell, Ind. Eng. Chem. Res. 60 (2021) 13052", 8.3,
        "95 % of the authors' data for 31 refrigerant mixtures lie within; critical enhancement left out in mixtures");

    public static TransportMethod Parachor { get; } = new("surface tension by parachors", "Macleod, Trans. Faraday Soc. 19 (1923) 38; Weinaug, Katz, Ind. Eng. Chem. 35 (1943) 239", null);

    /// <summary>What is said of liquids of another model than the methods were made with.</summary>
    public static string OtherDensity(string model) =>
        $"viscosity and conductivity of a liquid at the density of the {model} model: 1 % in density is 4 to 9 % in viscosity between 250 and 130 K, over 20 % in colder liquids; the reference model's are the better ones";

    public const string ViscosityExtrapolated = "viscosity: this liquid is denser or colder than its components are at their triple points; the method is extrapolated";
    public const string ConductivityExtrapolated = "conductivity: this liquid is denser or colder than its components are at their triple points; the method is extrapolated";
    public const string TensionAboveCritical = "surface tension: above the critical temperature of the pure fluid";
}

namespace Coldwright.Machine.Insulation;

/// <summary>An evacuated space: radiation between gray walls, with shields between them if any, and the gas that is left.</summary>
/// <remarks>
/// <para>q = sigma (Tw^4 - Tc^4)/(1/e1 + 1/e2 - 1 + N (2/es - 1)) + k_gas (Tw - Tc)/gap + N-layer contact conductance x (Tw - Tc). Gray diffuse
/// parallel walls; N floating shields of emissivity es on both sides: the textbook network (F. P. Incropera, D. P. DeWitt, Fundamentals of Heat
/// and Mass Transfer, ch. 13). Area: that of the inner wall.</para>
/// <para>Gas by <see cref="CellGasConduction"/> at the mean temperature, open to one pressure; no convection, which at pressures below 1 Pa and
/// gaps below 5 cm does not arise. One standard deviation 30 %: emissivities and edges of blankets, our judgement.</para>
/// </remarks>
/// <param name="Name">For reports.</param>
/// <param name="ThicknessM">Gap, m, above 0 to 2.</param>
/// <param name="InnerEmissivity">Above 0 to 1.</param>
/// <param name="OuterEmissivity">Above 0 to 1.</param>
/// <param name="Residual">Gas that is left, its pressure at 293 K in Pa, up to 10 Pa.</param>
/// <param name="Shields">Number N of shields or blanket layers, 0 or more.</param>
/// <param name="ShieldEmissivity">Above 0 to 1; aluminised film new 0.03 to 0.05, our assumption.</param>
/// <param name="ContactConductance">Conductance of the stack of shields as a whole, W/(m2 K), 0 or more.</param>
/// <param name="Accommodation">Above 0 to 1.</param>
public sealed record EvacuatedLayer(
    string Name, double ThicknessM, double InnerEmissivity, double OuterEmissivity, CellGas Residual,
    int Shields = 0, double ShieldEmissivity = 0.04, double ContactConductance = 0, double Accommodation = 1) : InsulationLayer(Name, ThicknessM)
{
    private readonly CellGas _residual = Checked(InnerEmissivity, OuterEmissivity, ShieldEmissivity, Shields, ContactConductance, Residual);
    private readonly CellGasConduction _gas = new(Residual with { Closed = false });

    /// <summary>Gas that is left, its pressure in Pa, up to 10 Pa, the same all through.</summary>
    public CellGas Residual
    {
        get => _residual;
        init
        {
            // a copy with another gas needs that gas's conduction too
            _residual = Checked(InnerEmissivity, OuterEmissivity, ShieldEmissivity, Shields, ContactConductance, value);
            _gas = new(_residual);
        }
    }

    /// <inheritdoc/>
    public override double RelativeUncertainty => 0.3;

    /// <inheritdoc/>
    public override double Potential(double coldK, double warmK)
    {
        Check(InnerEmissivity, OuterEmissivity, ShieldEmissivity, Shields, ContactConductance, Residual);
        var resistance = 1 / InnerEmissivity + 1 / OuterEmissivity - 1 + Shields * (2 / ShieldEmissivity - 1);
        var radiation = CellularInsulation.StefanBoltzmann * (warmK * warmK + coldK * coldK) * (warmK + coldK) * (warmK - coldK) / resistance;
        // each gap between two shields is a wall to wall distance of its own
        var gap = ThicknessM / (Shields + 1);
        var gas = Residual.PressurePa > 0 ? _gas.Conductivity((coldK + warmK) / 2, gap, Accommodation) / ThicknessM : 0;
        return ThicknessM * (radiation + (gas + ContactConductance) * (warmK - coldK));
    }

    /// <inheritdoc/>
    public override double ShapeM(WallShape shape, double fromM) => shape.AreaM2(fromM) / ThicknessM;

    /// <inheritdoc/>
    /// <remarks>None: film weighs little.</remarks>
    public override double? HeatPerVolume(double fromK, double toK) => 0;

    /// <inheritdoc/>
    public override IEnumerable<string> Warnings(double coldK, double warmK)
    {
        if (Residual.PressurePa > 1) yield return FormattableString.Invariant($"the evacuated space {Name} holds {Residual.PressurePa:0.##} Pa: above 1 Pa its gas conducts nearly as at one atmosphere");
        if (Shields > 0 && ContactConductance == 0) yield return $"the shields in {Name} are taken as floating free: real blankets of many layers leak several times more at edges and contacts";
    }

    private static CellGas Checked(double inner, double outer, double shield, int shields, double contact, CellGas residual)
    {
        Check(inner, outer, shield, shields, contact, residual);
        return residual with { Closed = false };
    }

    private static void Check(double inner, double outer, double shield, int shields, double contact, CellGas residual)
    {
        Emissivity("inner", inner);
        Emissivity("outer", outer);
        Emissivity("shield", shield);
        if (shields is < 0 or > 200) throw new ArgumentException($"the number of shields must be 0 to 200, got {shields}");
        if (!(contact >= 0 && double.IsFinite(contact))) throw new ArgumentException(FormattableString.Invariant($"the contact conductance must be 0 W/(m2 K) or more, got {contact} W/(m2 K)"));
        if (!(residual.PressurePa <= 10)) throw new ArgumentException(FormattableString.Invariant($"an evacuated space holds at most 10 Pa, got {residual.PressurePa} Pa: describe it as a foam or powder with gas"));
    }

    private static void Emissivity(string wall, double value)
    {
        if (!(value is > 0 and <= 1)) throw new ArgumentException(FormattableString.Invariant($"the {wall} emissivity must be above 0 and not above 1, got {value}"));
    }
}

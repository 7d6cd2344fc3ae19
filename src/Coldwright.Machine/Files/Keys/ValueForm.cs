using Coldwright.Quantities;

namespace Coldwright.Machine.Files.Keys;

/// <summary>What may stand behind a key.</summary>
public abstract record ValueForm;

/// <summary>A quantity with unit.</summary>
/// <param name="Kind">Its kind and limits.</param>
public sealed record QuantityForm(QuantityKind Kind) : ValueForm;

/// <summary>Any text.</summary>
public sealed record TextForm : ValueForm;

/// <summary>One of a few words.</summary>
/// <param name="Choices">The words.</param>
public sealed record ChoiceForm(params IReadOnlyList<string> Choices) : ValueForm;

/// <summary>A tube size: <c>3/8 in ACR</c>, <c>2-1/8 in type L</c>, <c>6.35 x 0.8 mm</c>.</summary>
public sealed record TubeForm : ValueForm;

/// <summary>A mixture: <c>nitrogen 0.35, methane 0.65</c>.</summary>
public sealed record MixtureForm : ValueForm;

/// <summary>A solid of the materials data.</summary>
public sealed record MaterialForm : ValueForm;

/// <summary>One efficiency, or a group <c>{2: 0.60, 5: 0.58}</c> of efficiencies at pressure ratios.</summary>
public sealed record EfficiencyForm : ValueForm;

/// <summary>Three inside lengths: <c>0.5 x 0.4 x 0.4 m</c>.</summary>
public sealed record BoxForm : ValueForm;

/// <summary>A port: <c>part</c> or <c>part.stream</c>.</summary>
public sealed record PortForm : ValueForm;

/// <summary>A group of known keys.</summary>
/// <param name="Section">The keys.</param>
public sealed record SectionForm(FileSection Section) : ValueForm;

/// <summary>A list of groups of known keys.</summary>
/// <param name="Section">The keys of each.</param>
public sealed record SectionListForm(FileSection Section) : ValueForm;

/// <summary>A group whose keys are substance names.</summary>
/// <param name="Value">What stands behind each name.</param>
public sealed record BySubstanceForm(ValueForm Value) : ValueForm;

/// <summary>The parts of a machine by name.</summary>
public sealed record PartsForm : ValueForm;

/// <summary>A whole number, such as the poles of a motor.</summary>
/// <param name="Lowest">Lowest value.</param>
/// <param name="Highest">Highest value.</param>
/// <param name="Step">Only the lowest value and every so many above it.</param>
public sealed record WholeNumberForm(int Lowest, int Highest, int Step = 1) : ValueForm;

/// <summary>A list of plain numbers: <c>[12.1, 0.43, -0.018]</c>.</summary>
/// <param name="Count">How many there must be.</param>
public sealed record NumberListForm(int Count) : ValueForm;

/// <summary>A refrigerant: a substance, a blend or a mixture, <c>R290</c>, <c>R410A</c>, <c>propane 0.6, isobutane 0.4</c>.</summary>
public sealed record RefrigerantForm : ValueForm;

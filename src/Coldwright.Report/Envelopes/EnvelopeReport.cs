using Coldwright.Fluids.Envelopes;
using Coldwright.Fluids.Substances;
using Coldwright.Quantities;

namespace Coldwright.Report.Envelopes;

/// <summary>An envelope by one model or by two, to be shown.</summary>
public sealed record EnvelopeReport
{
    /// <summary>The mixture.</summary>
    public required Composition Mixture { get; init; }
    /// <summary>The envelopes, the default model first; one or two.</summary>
    public required IReadOnlyList<ModelEnvelope> Envelopes { get; init; }
    /// <summary>Units a person reads first.</summary>
    public UnitSystem Units { get; init; } = UnitSystem.Si;
    /// <summary>Barometric pressure for gauge readings, Pa absolute; 101,325 when no room is known.</summary>
    public double RoomPressurePa { get; init; } = 101325;

    /// <summary>The envelope shown first.</summary>
    public ModelEnvelope Main => Envelopes[0];

    /// <summary>The second model's, or null.</summary>
    public ModelEnvelope? Second => Envelopes.Count > 1 ? Envelopes[1] : null;

    internal Readout Readout(bool typographic) => new(Units, RoomPressurePa, typographic);

    /// <summary>Unit of absolute pressures on axes and in tables.</summary>
    internal string PressureSymbol => Units == UnitSystem.Us ? "psia" : "bar abs";

    /// <summary>An absolute pressure in that unit.</summary>
    internal double PressureValue(double pressurePa) => PressureUnit.FromSi(pressurePa, 0);

    /// <summary>A note in the reader's units; in SI as it was written.</summary>
    internal string Say(EnvelopeNote note, Readout readout) => Units == UnitSystem.Us ? note.With(readout.Temperature, p => $"{readout.Figures(PressureValue(p), 4)} {PressureSymbol}") : note.ToString();

    /// <summary>Round absolute pressures at which bubble and dew temperature are told, Pa.</summary>
    internal IReadOnlyList<double> TablePressuresPa => [.. (Units == UnitSystem.Us ? (double[])[15, 30, 75, 150, 300, 450] : [1, 2, 5, 10, 20, 30]).Select(p => PressureUnit.ToSi(p, 0))];

    private Unit PressureUnit => UnitTable.TryFindWord(Units == UnitSystem.Us ? "psia" : "bara", out var unit) ? unit : throw new InvalidOperationException("the unit table has no absolute pressure");
}

/// <summary>One model's envelope.</summary>
/// <param name="Model">reference or cubic.</param>
/// <param name="Envelope">The envelope.</param>
/// <param name="Warnings">What a person must be told about the model for this mixture.</param>
public sealed record ModelEnvelope(string Model, EnvelopeResult Envelope, IReadOnlyList<string> Warnings)
{
    /// <summary>Warnings about the model and notes about the lines.</summary>
    public IEnumerable<EnvelopeNote> AllNotes => Warnings.Select(w => (EnvelopeNote)w).Concat(Envelope.Notes);
}

using Coldwright.Fluids.Envelopes;
using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.EquationsOfState.PengRobinson;
using Coldwright.Fluids.Substances;
using Coldwright.Report.Envelopes;

namespace Coldwright.Web.Answers;

/// <summary>The envelope of the mixture in a machine file.</summary>
internal static class MixtureAnswer
{
    public static EnvelopeReport Envelope(Composition mixture, bool cubic, double roomPressurePa, CancellationToken cancel)
    {
        var kept = Enumerable.Range(0, mixture.Names.Count).Where(i => mixture.MoleFractions[i] > 0).ToArray();
        var present = new Composition([.. kept.Select(i => mixture.Names[i])], [.. kept.Select(i => mixture.MoleFractions[i])]);
        if (present.Names.Count == 1) throw new ArgumentException($"{present.Names[0]} alone boils at one temperature for each pressure and has no envelope");
        HelmholtzModel model = cubic ? CubicModel.Create(present.Names) : ReferenceModel.Create(present.Names);
        var envelope = EnvelopeTracer.Trace(model, present.MoleFractions, new EnvelopeWindow(), cancel);
        return new EnvelopeReport { Mixture = present, Envelopes = [new ModelEnvelope(model.Name, envelope, model.Warnings)], RoomPressurePa = roomPressurePa };
    }
}

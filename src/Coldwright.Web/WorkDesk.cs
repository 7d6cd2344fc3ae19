using Coldwright.Machine.Files.Editing;
using Coldwright.Web.Answers;
using Coldwright.Web.Cooler;
using Coldwright.Web.Http;
using Coldwright.Web.Orders;
using Coldwright.Web.Work;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web;

/// <summary>Takes orders for long work: rate, safety, help, blend, size, charge, cooldown, batch, envelope, compare.</summary>
internal sealed class WorkDesk(CoolerFiles files, JobBoard jobs)
{
    public async Task Start(HttpContext context, Question question, IReadOnlyList<Change> changes)
    {
        var now = files.Now();
        Job? job = null;
        try
        {
            if (changes.Count > 0 && now.Text is { } text) now = now.With(changes.Aggregate(text, (t, c) => ValueEditor.Set(t, c.Place, c.Value)));
            if (now.IsGood) job = question.Text("kind") is { } kind ? Order(kind, question, now) : null;
        }
        catch (ArgumentException e)
        {
            await Reply.Problems(context, [e.Message.Split(" (Parameter")[0]], StatusCodes.Status422UnprocessableEntity).ConfigureAwait(false);
            return;
        }
        if (job is null)
        {
            await Reply.Problems(context, now.IsGood ? ["there is no such work"] : now.Folder.Problems.Select(p => p.ToString()), StatusCodes.Status422UnprocessableEntity).ConfigureAwait(false);
            return;
        }
        await Reply.Json(context, w =>
        {
            w.WriteStartObject();
            JobJson.Progress(w, job);
            w.WriteEndObject();
        }).ConfigureAwait(false);
    }

    private Job? Order(string kind, Question question, Snapshot now)
    {
        bool cubic = question.Text("model") == "cubic";
        string word = cubic ? "cubic" : "reference";
        var machine = now.Folder.Machine!;
        var order = question.Order(machine.Room.PressurePa);
        Job Ask(string model, string details, Func<Action<string>, CancellationToken, object> work) => jobs.Ask(new WorkQuestion(kind, model, details, now.Revision), work);
        switch (kind)
        {
            case "rate":
                // The reference answer to what the file no longer says is wanted by nobody.
                jobs.CancelOlder(kind, now.Revision);
                return Ask("", "", (say, cancel) => Raters.Full(now, say, cancel));
            case "safety":
                jobs.CancelOlder(kind, now.Revision);
                return Ask("", "", (say, cancel) => Raters.Safety(now, say, cancel));
            case "help":
                return Ask(word, "", (say, cancel) => Raters.Helps(now, cubic, say, cancel));
            case "cooldown":
                return Ask(word, "", (say, cancel) => Raters.Cooldown(now, cubic, say, cancel));
            case "batch":
                return Ask(word, "", (say, cancel) => Raters.Batch(now, cubic, say, cancel));
            case "blend":
                var blend = BlendOrder.Read(order, cubic);
                return Ask(word, question.Details, (say, cancel) => Planners.Blend(now, blend, say, cancel));
            case "charge":
                var charge = ChargeOrder.Read(order, machine.Room.PressurePa);
                return Ask(word, question.Details, (say, cancel) => Planners.Charge(now, charge, cubic, say, cancel));
            case "size":
                var size = SizeOrder.Read(order, machine);
                return Ask(word, question.Details, (say, cancel) => Planners.Size(now, size, cubic, say, cancel));
            case "envelope":
                jobs.CancelOlder(kind, now.Revision);
                return Ask(word, "", (say, cancel) =>
                {
                    say($"tracing every phase boundary with the {word} model");
                    return MixtureAnswer.Envelope(machine.Charge.Mixture, cubic, machine.Room.PressurePa, cancel);
                });
            case "compare":
                var (first, second) = (Side(question.Text("first"), now), Side(question.Text("second"), now));
                return Ask("", $"{first.Name} {first.Files.Revision} {second.Name} {second.Files.Revision}", (say, cancel) =>
                {
                    say($"rating {first.Name}");
                    var one = Raters.Full(first.Files, null, cancel);
                    say($"rating {second.Name}");
                    return new CompareAnswer(first.Name, one, second.Name, Raters.Full(second.Files, null, cancel));
                });
            default:
                return null;
        }
    }

    // The cooler as it stands has no name among the variants.
    private (string Name, Snapshot Files) Side(string? name, Snapshot now)
    {
        if (string.IsNullOrEmpty(name)) return ("as it stands", now);
        var variant = Variants.Read(files.Directory, name) ?? throw new ArgumentException($"there is no variant '{name}'");
        if (!variant.IsGood) throw new ArgumentException($"variant '{name}': {string.Join("; ", variant.Folder.Problems)}");
        return (name, variant);
    }
}

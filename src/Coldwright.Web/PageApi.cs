using Coldwright.Report;
using Coldwright.Web.Access;
using Coldwright.Web.Answers;
using Coldwright.Web.Cooler;
using Coldwright.Web.Http;
using Coldwright.Web.Work;
using Microsoft.AspNetCore.Http;

namespace Coldwright.Web;

/// <summary>What the server answers: the page itself, the folder, changes to it, first answers at once and long work by number.</summary>
internal sealed class PageApi : IDisposable
{
    private readonly PageOptions _options;
    private readonly Gate _gate;
    private readonly CoolerFiles _files;
    private readonly JobBoard _jobs = new();
    private readonly FirstAnswers _first;
    private readonly WorkDesk _desk;
    private long _answered;

    public PageApi(PageOptions options)
    {
        (_options, _gate, _files) = (options, new Gate(options), new CoolerFiles(options.Directory));
        (_desk, _first) = (new WorkDesk(_files, _jobs), new FirstAnswers(_jobs));
        // The first rating of a process takes many times as long as the second; it is over by the time a browser has opened.
        _first.WarmUp(_files.Now());
    }

    /// <summary>How many requests have been answered.</summary>
    public long Answered => Interlocked.Read(ref _answered);

    public async Task Answer(HttpContext context)
    {
        SafeHeaders.Write(context.Response.Headers);
        var path = context.Request.Path.Value ?? "/";
        try
        {
            switch (_gate.Judge(context.Request))
            {
                case Verdict.WrongHost:
                    await Reply.Problems(context, ["this address is not served here under that name"], StatusCodes.Status421MisdirectedRequest).ConfigureAwait(false);
                    break;
                case Verdict.NeedsToken:
                    await TokenDoor.Answer(context, _gate, path).ConfigureAwait(false);
                    break;
                case Verdict.Foreign:
                    await Reply.Problems(context, ["only the page itself may change something; load it again"], StatusCodes.Status403Forbidden).ConfigureAwait(false);
                    break;
                default:
                    await (HttpMethods.IsPost(context.Request.Method) ? Post(context, path) : Get(context, path)).ConfigureAwait(false);
                    break;
            }
            Interlocked.Increment(ref _answered);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The visitor went on to something newer: nobody waits for this answer.
            context.Abort();
        }
    }

    public void Dispose() => _jobs.Dispose();

    private Task Get(HttpContext context, string path)
    {
        // An address with the token in it has done its work once the cookie is set; it must not stay in the address bar.
        if (path == "/" && context.Request.Query.ContainsKey("token")) return TokenDoor.Clean(context);
        var units = Question.Units(context);
        switch (path)
        {
            case "/":
                return Reply.Text(context, PageResources.Text("index.html").Replace("{{word}}", _gate.PageWord, StringComparison.Ordinal), "text/html; charset=utf-8");
            case "/api/state":
                return Reply.Json(context, w => StateJson.Write(w, _files, units));
            case "/api/pulse":
                return Reply.Json(context, w =>
                {
                    w.WriteStartObject();
                    w.WriteString("revision", _files.Now().Revision);
                    w.WriteNumber("serial", _jobs.Serial);
                    w.WriteStartArray("jobs");
                    foreach (var job in _jobs.Jobs)
                    {
                        w.WriteStartObject();
                        JobJson.Progress(w, job);
                        w.WriteEndObject();
                    }
                    w.WriteEndArray();
                    w.WriteEndObject();
                });
            case "/api/form":
                var now = _files.Now();
                return Reply.Json(context, w => FormJson.Write(w, now.Text ?? "", now.Revision));
            case "/api/job":
                if (!int.TryParse(context.Request.Query["id"], out var id) || _jobs.Find(id) is not { } found)
                    return Reply.Problems(context, ["this work is no longer kept; ask for it again"], StatusCodes.Status404NotFound);
                var files = _files.Now();
                return found.IsOver ? Reply.Json(context, found.Sent.Get($"{units} {files.Revision}", () => Reply.JsonBytes(w => JobJson.Whole(w, found, units, files))))
                    : Reply.Json(context, w => JobJson.Whole(w, found, units, files));
        }
        var name = path.StartsWith("/files/", StringComparison.Ordinal) ? path["/files/".Length..] : "";
        return PageResources.Find(name) is { } bytes && name != "index.html"
            ? Reply.Bytes(context, bytes, PageResources.TypeOf(name))
            : Reply.Problems(context, ["there is nothing at this address"], StatusCodes.Status404NotFound);
    }

    private async Task Post(HttpContext context, string path)
    {
        using var question = await Question.Read(context).ConfigureAwait(false);
        if (question?.Changes() is not { } changes)
        {
            await Reply.Problems(context, ["the request is not one that the page makes"]).ConfigureAwait(false);
            return;
        }
        var units = Question.Units(context);
        switch (path)
        {
            case "/api/edit":
                await EditReply.Write(context, _files.Edit(changes), _files).ConfigureAwait(false);
                break;
            case "/api/undo":
                await EditReply.Write(context, _files.Undo(), _files).ConfigureAwait(false);
                break;
            case "/api/redo":
                await EditReply.Write(context, _files.Redo(), _files).ConfigureAwait(false);
                break;
            case "/api/try":
                await _first.Answer(context, _files.Now(), changes, question.Flag("freezing"), units).ConfigureAwait(false);
                break;
            case "/api/start":
                await _desk.Start(context, question, changes).ConfigureAwait(false);
                break;
            case "/api/cancel":
                if (question.Number("id") is { } id) _jobs.Find(id)?.Cancel();
                await Reply.Json(context, w => { w.WriteStartObject(); w.WriteEndObject(); }).ConfigureAwait(false);
                break;
            case "/api/keep":
                var refused = Variants.Keep(_files.Directory, question.Text("name") ?? "", _files.Now());
                await (refused == "" ? Reply.Json(context, w => StateJson.Write(w, _files, units)) : Reply.Problems(context, [refused], StatusCodes.Status409Conflict)).ConfigureAwait(false);
                break;
            case "/api/take":
                var variant = Variants.Read(_files.Directory, question.Text("name") ?? "");
                await EditReply.Write(context, variant is { Text: { } text } ? _files.Exchange(text) : EditOutcome.Refused("there is no such variant"), _files).ConfigureAwait(false);
                break;
            default:
                await Reply.Problems(context, ["there is nothing at this address"], StatusCodes.Status404NotFound).ConfigureAwait(false);
                break;
        }
    }
}

namespace Coldwright.Report.Html;

/// <summary>The look of report pages: paper, quiet lines, no outside fonts; follows the reader's light or dark choice; prints.</summary>
internal static class PageStyle
{
    public const string Css = """
        *{box-sizing:border-box}
        body{margin:0;background:var(--paper);color:var(--text);font:16px/1.55 ui-sans-serif,system-ui,"Segoe UI","Helvetica Neue",Arial,sans-serif}
        main{max-width:860px;margin:0 auto;padding:28px 20px 60px}
        header p{margin:.2em 0;color:var(--quiet)}
        h1{font-size:1.9rem;line-height:1.2;margin:0 0 .2em;letter-spacing:-.01em}
        h2{font-size:1.25rem;line-height:1.3;margin:0 0 .5em}
        section{margin-top:40px}
        p{margin:.5em 0}
        .verdict{font-size:1.15rem;border-left:4px solid var(--cooling);padding:.1em 0 .1em 14px;margin:20px 0}
        .verdict.short{border-color:var(--high)}
        .tiles{display:grid;grid-template-columns:repeat(auto-fit,minmax(220px,1fr));gap:10px;margin:20px 0}
        .tile{background:var(--card);border:1px solid var(--rule);border-radius:6px;padding:12px 14px}
        .tile .name{display:block;color:var(--quiet);font-size:.86rem}
        .tile .value{display:block;font-size:1.5rem;font-weight:650;line-height:1.3;font-variant-numeric:tabular-nums}
        .tile .value small{font-size:.95rem;font-weight:400;color:var(--quiet);white-space:nowrap}
        .tile .note{display:block;color:var(--quiet);font-size:.84rem;line-height:1.35}
        figure{margin:0;background:var(--card);border:1px solid var(--rule);border-radius:6px;padding:16px}
        figcaption{margin-top:12px;max-width:70ch}
        details{margin-top:10px}
        summary{cursor:pointer;color:var(--low);padding:.25em 0}
        .finding{border:1px solid var(--rule);border-left-width:5px;border-radius:6px;background:var(--card);padding:10px 14px;margin:10px 0}
        .finding.stop{border-left-color:#b3173a}.finding.serious{border-left-color:var(--leak)}
        .finding .grade{font-weight:700;text-transform:uppercase;letter-spacing:.05em;font-size:.82rem}
        .finding.stop .grade{color:#b3173a}.finding.serious .grade{color:var(--leak)}
        .finding .source{color:var(--quiet);font-size:.84rem}
        @media (prefers-color-scheme:dark){.finding.stop{border-left-color:#ff7d94}.finding.stop .grade{color:#ff7d94}}
        .scroll{overflow-x:auto;margin:8px 0}
        table{border-collapse:collapse;font-size:.9rem;line-height:1.4;min-width:55%}
        th,td{text-align:left;padding:5px 16px 5px 0;border-bottom:1px solid var(--rule);vertical-align:top}
        th{color:var(--quiet);font-weight:600}
        .number{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
        .quiet{color:var(--quiet)}
        ul{padding-left:1.2em;margin:.5em 0}
        footer{margin-top:44px;padding-top:12px;border-top:1px solid var(--rule);color:var(--quiet);font-size:.88rem}
        @media (max-width:640px){main{padding:18px 12px 40px}h1{font-size:1.5rem}figure{padding:8px}figcaption{padding:0 4px}.tiles{grid-template-columns:1fr 1fr}.tile .value{font-size:1.25rem}}
        @media print{figure,.finding,.tile{break-inside:avoid}details:not([open])>*:not(summary){display:block}}
        """;
}

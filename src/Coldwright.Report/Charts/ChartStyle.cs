namespace Coldwright.Report.Charts;

/// <summary>Colours and type of all pictures, as a style sheet for the page that holds them.</summary>
/// <remarks>
/// Warm for the high-pressure stream, cold for the low-pressure one. The pairs that share a picture differ in lightness as well as in hue, so
/// that they stay apart in every common kind of colour blindness and in a grey print; every line also carries its name.
/// </remarks>
public static class ChartStyle
{
    /// <summary>Style sheet text.</summary>
    public const string Css = """
        :root{color-scheme:light dark;--paper:#fbfaf6;--card:#ffffff;--text:#232a2e;--quiet:#5f686d;--rule:#d9d6cc;
        --plain:#232a2e;--high:#b5451b;--low:#17689c;--cooling:#0b6b64;--leak:#9a6500;--second:#6a5f86;--loss:#8b7f74}
        @media (prefers-color-scheme:dark){:root{--paper:#13181b;--card:#1a2125;--text:#e7e4dc;--quiet:#a3abad;--rule:#364047;
        --plain:#e7e4dc;--high:#f2946a;--low:#70b9ea;--cooling:#58c9ba;--leak:#e3b24c;--second:#b3a8d6;--loss:#a2978b}}
        .chart{display:block;width:100%;height:auto;font-family:ui-sans-serif,system-ui,"Segoe UI","Helvetica Neue",Arial,sans-serif}
        .chart.phone{display:none}
        @media (max-width:640px){.chart.wide{display:none}.chart.phone{display:block;max-width:460px;margin:0 auto}}
        .chart .plain{--ink:var(--plain)}.chart .high{--ink:var(--high)}.chart .low{--ink:var(--low)}.chart .cooling{--ink:var(--cooling)}
        .chart .leak{--ink:var(--leak)}.chart .second{--ink:var(--second)}.chart .loss{--ink:var(--loss)}
        .chart text{fill:var(--quiet)}
        .chart .label{fill:var(--ink);paint-order:stroke;stroke:var(--card);stroke-width:4px;stroke-linejoin:round}
        .chart .bold{font-weight:600}
        .chart .grid{stroke:var(--rule);stroke-width:1}
        .chart .axis{stroke:var(--quiet);stroke-width:1}
        .chart .line{fill:none;stroke:var(--ink);stroke-width:2.6;stroke-linejoin:round;stroke-linecap:round}
        .chart .thin{stroke-width:1.4;stroke-dasharray:5 4}
        .chart .area{fill:var(--ink);fill-opacity:.13;stroke:none}
        .chart .rule{stroke:var(--ink);stroke-width:1.2;stroke-dasharray:2 4}
        .chart .span{stroke:var(--ink);stroke-width:2;fill:none}
        .chart .leader{stroke:var(--ink);stroke-width:.8;opacity:.7}
        .chart .mark{fill:var(--card);stroke:var(--ink);stroke-width:2.4}
        .chart .touch{fill:transparent;stroke:none}
        .chart .touch:hover{fill:var(--ink);fill-opacity:.35}
        .chart .strip{fill:var(--ink);stroke:var(--card);stroke-width:1.5}
        .chart .bar{fill:var(--ink)}
        .chart text.onbar{fill:var(--card)}
        """;

    /// <summary>Class name of an ink.</summary>
    public static string Class(Ink ink) => ink switch
    {
        Ink.High => "high",
        Ink.Low => "low",
        Ink.Cooling => "cooling",
        Ink.Leak => "leak",
        Ink.Second => "second",
        Ink.Loss => "loss",
        _ => "plain",
    };
}

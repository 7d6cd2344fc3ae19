namespace Coldwright.Report.Loops;

/// <summary>Colours and strokes of the drawing of a loop, on top of those of all pictures (<see cref="Charts.ChartStyle"/>).</summary>
/// <remarks>The streams differ in form as well as in colour: a solid bar, a hollow tube, a broken bar, a thin line.</remarks>
public static class LoopStyle
{
    /// <summary>Style sheet text.</summary>
    public const string Css = """
        :root{--danger:#b3173a}
        @media (prefers-color-scheme:dark){:root{--danger:#ff7d94}}
        .chart.loop.wide{max-width:640px;margin:0 auto}
        .loop .pipe{fill:none;stroke:var(--ink);stroke-width:3.6;stroke-linejoin:round}
        .loop .pipe.low{stroke-width:6}
        .loop .bore{fill:none;stroke:var(--card);stroke-width:2.8;stroke-linejoin:round}
        .loop .pipe.cooling{stroke-width:3.2;stroke-dasharray:9 4}
        .loop .pipe.side{stroke-width:1.7;stroke-dasharray:none}
        .loop .arrow{fill:var(--ink);stroke:var(--card);stroke-width:1.2;stroke-linejoin:round}
        .loop .shell{fill:var(--card);stroke:var(--text);stroke-width:1.8;stroke-linejoin:round}
        .loop .detail{fill:none;stroke:var(--text);stroke-width:1.3;stroke-linecap:round;stroke-linejoin:round}
        .loop .faint{fill:none;stroke:var(--quiet);stroke-width:1}
        .loop .solid{fill:var(--text);stroke:none}
        .loop .tube{fill:none;stroke:var(--ink);stroke-width:2.4;stroke-linecap:round;stroke-linejoin:round}
        .loop .fine{stroke-width:1.5}
        .loop .jacket{fill:none;stroke:var(--ink);stroke-width:19;stroke-linecap:round;stroke-linejoin:round}
        .loop .gas{fill:none;stroke:var(--card);stroke-width:14.5;stroke-linecap:round;stroke-linejoin:round}
        .loop .strand{fill:none;stroke:var(--ink);stroke-width:3.6;stroke-linecap:butt;stroke-linejoin:round}
        .loop .solder{fill:none;stroke:var(--quiet);stroke-width:3;stroke-linecap:round;stroke-dasharray:0 6}
        .loop .liquid{fill:var(--cooling);fill-opacity:.28;stroke:none}
        .loop .surface{fill:none;stroke:var(--cooling);stroke-width:1.6}
        .loop .metal{fill:var(--rule);stroke:var(--text);stroke-width:1.8;stroke-linejoin:round}
        .loop .cold{fill:var(--low);fill-opacity:.055;stroke:none}
        .loop .wall{fill:var(--card);stroke:var(--text);stroke-width:1.7}
        .loop .foam{fill:none;stroke:var(--quiet);stroke-width:3.2;stroke-linecap:round;stroke-dasharray:0 8;opacity:.55}
        .loop .sleeve{fill:var(--card);stroke:none}
        .loop .ribbon{fill:var(--ink)}
        .loop .rule{fill:none;stroke:var(--rule);stroke-width:1;stroke-dasharray:none}
        .loop .name{fill:var(--text);font-weight:600}
        .loop .figure{fill:var(--text);font-variant-numeric:tabular-nums}
        .loop text.warn{fill:var(--danger);font-weight:700}
        .loop .flag{fill:var(--danger);stroke:var(--danger);stroke-width:1.4;stroke-linejoin:round}
        .loop .part.marked .shell,.loop .part.marked .metal{stroke:var(--danger);stroke-width:2.8}
        .loop .part.marked .jacket,.loop .part.marked .pipe,.loop .part.marked .tube,.loop .part.marked .solder,.loop .line.marked .pipe{stroke:var(--danger)}
        .loop .touch{fill:transparent;stroke:none}
        .loop [tabindex]{cursor:pointer}
        .loop [tabindex]:focus{outline:2px solid var(--low);outline-offset:2px}
        """;
}

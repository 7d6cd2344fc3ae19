using System.Text;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;
using static Coldwright.Report.Loops.Signs.Sign;

namespace Coldwright.Report.Loops;

/// <summary>Explains, below the drawing, the lines and signs that are on it.</summary>
internal sealed class LoopLegend
{
    private const double Icon = 34, RowGap = 10, Top = 30;

    private readonly LoopSize _size;
    private readonly List<(string Icon, TextBlock Text)> _items = [];
    private readonly int _columns;
    private readonly double _columnWidth;

    public LoopLegend(LoopLayout layout, LoopPicture picture, LoopFigures figures)
    {
        _size = picture.Size;
        _columns = _size.IsPhone ? 2 : 4;
        _columnWidth = (_size.Width - 12) / _columns;
        Lines(picture);
        foreach (var (kind, sign, words) in Kinds(layout, picture))
            if (picture.Signs.Any(s => kind(s))) Item(Small(sign), words);
        if (picture.ColdBox is not null) Item("<rect class=\"wall\" x=\"3\" y=\"3\" width=\"28\" height=\"28\" rx=\"4\"/><rect class=\"foam\" x=\"7\" y=\"7\" width=\"20\" height=\"20\" rx=\"3\"/><rect class=\"wall\" x=\"11\" y=\"11\" width=\"12\" height=\"12\" rx=\"2\"/><rect class=\"cold\" x=\"11\" y=\"11\" width=\"12\" height=\"12\" rx=\"2\"/>", "cold box with its insulation");
        if (figures.Marks.Count > 0) Item(LoopPainter.Flag(10, 24, 16), "a finding: read it before you build or run");
        if (figures.Entries.Any(f => f.Value is null)) Item($"<text class=\"figure\" x=\"12\" y=\"22\" font-size=\"{N(_size.Font)}\">{FigureText.Unknown}</text>", "not known, or too old to be believed");
    }

    /// <summary>Height, px.</summary>
    public double Height => Top + Rows().Sum(r => r.Height + RowGap);

    public void Write(StringBuilder svg, double top)
    {
        svg.Append($"<g class=\"legend\"><path class=\"rule\" d=\"M4 {N(top + 4)}H{N(_size.Width - 4)}\"/><text class=\"name\" x=\"8\" y=\"{N(top + 20)}\" font-size=\"{N(_size.Font)}\">How to read it</text>\n");
        var y = top + Top;
        foreach (var (row, height) in Rows())
        {
            for (var i = 0; i < row.Length; i++)
            {
                var x = 6 + i * _columnWidth;
                svg.Append($"<g transform=\"translate({N(x)} {N(y + (height - Icon) / 2)})\">{row[i].Icon}</g>");
                var baseline = y + (height - row[i].Text.Height) / 2 + 0.79 * _size.LineHeight;
                foreach (var line in row[i].Text.Rows)
                {
                    svg.Append($"<text class=\"quiet\" x=\"{N(x + Icon + 6)}\" y=\"{N(baseline)}\" font-size=\"{N(_size.Font)}\">{Markup.Escape(line[0].Text)}</text>");
                    baseline += _size.LineHeight;
                }
            }
            svg.Append('\n');
            y += height + RowGap;
        }
        svg.Append("</g>\n");
    }

    private IEnumerable<((string Icon, TextBlock Text)[] Items, double Height)> Rows() =>
        _items.Chunk(_columns).Select(row => (row, Math.Max(Icon, row.Max(i => i.Text.Height))));

    private void Item(string icon, string words) => _items.Add((icon, new TextBlock(_size, _columnWidth - Icon - 12).Add(words, TextTone.Quiet)));

    private void Lines(LoopPicture picture)
    {
        void Stroke(WireForm form, string words)
        {
            if (!picture.Wires.Any(w => w.Form == form || form.IsSide && w.Form.IsSide)) return;
            var ink = ChartStyle.Class(form.Ink);
            Item(Path($"pipe {form.Class}", "M0 17H34") + (form == WireForm.Low ? Path("bore", "M0 17H34") : "") + Path($"arrow {ink}", "M23 17L13 11V23Z"), words);
        }
        Stroke(WireForm.High, "high pressure; the arrow shows the flow");
        Stroke(WireForm.Low, "low pressure");
        Stroke(WireForm.Product, "product: gas, then liquid");
        Stroke(WireForm.High.Side, "branch to a relief or a buffer");
        Item("<rect class=\"ribbon high\" x=\"14\" y=\"1\" width=\"5\" height=\"16\"/><rect class=\"ribbon low\" x=\"14\" y=\"17\" width=\"5\" height=\"16\"/>", "left edge: warm above, cold below");
    }

    private static IEnumerable<(Func<PlacedSign, bool> Is, Sign Sign, string Words)> Kinds(LoopLayout layout, LoopPicture picture)
    {
        Func<PlacedSign, bool> Of<T>() => s => s.Part is T && !s.IsAccessory;
        Sign At<T>() => picture.Signs.First(s => s.Part is T && !s.IsAccessory).Sign;
        yield return (Of<CompressorPart>(), At<CompressorPart>(), layout.Compressor.Type == CompressorType.Rotary ? "rotary compressor with its suction bottle" : "piston compressor in its shell");
        yield return (s => s.IsAccessory && s.Part is CompressorPart, RoomSigns.OilSeparator(), "oil separator; thin line: oil going back");
        yield return (Of<AftercoolerPart>(), RoomSigns.Aftercooler(), "aftercooler: fins and fan");
        if (layout.WarmExchanger is not null) yield return (Of<WarmExchangerPart>(), ExchangerSigns.WarmExchanger(92), "warm exchanger: two streams side by side");
        if (layout.Precooler is not null) yield return (Of<PrecoolerPart>(), ColdSigns.Precooler(null), "precooler: cold jacket and its own small loop");
        yield return (Of<RecuperatorPart>(), ExchangerSigns.Recuperator(layout.Recuperator, 92), "recuperator: two streams side by side over its length");
        yield return (Of<ThrottlePart>(), ColdSigns.Throttle(layout.Throttle), layout.Throttle switch { { Capillary: not null } => "capillary: a coil of thin tube", { Valve: not null } => "throttle valve: a needle in its seat", _ => "throttle" });
        if (layout.Vessel is not null) yield return (Of<VesselPart>(), At<VesselPart>(), layout.Feed is null ? "vessel" : "vessel; a broken line: level not known");
        if (layout.Block is not null) yield return (Of<BlockPart>(), At<BlockPart>(), "metal block that is cooled");
        yield return (Of<CoilPart>(), VesselSigns.CoilAlone(), "coil that cools it");
        if (layout.Feed is not null) yield return (Of<FeedPart>(), RoomSigns.Bottle(), "gas bottle");
        yield return (s => s.IsAccessory && s.Part is FeedPart, RoomSigns.FeedCompressor(), "feed compressor");
        yield return (Of<BufferPart>(), RoomSigns.Buffer(), "buffer: unloading valve above, bleed below");
        yield return (Of<ValvePart>(), RoomSigns.Valve(), "shut-off valve");
        yield return (Of<ReliefPart>(), RoomSigns.Relief(), "relief: opens by itself");
        yield return (Of<FlaskPart>(), RoomSigns.Flask(), "open flask");
    }

    private static string Small(Sign sign)
    {
        var scale = Math.Min(1, Math.Min(Icon / sign.Width, Icon / sign.Height));
        return $"<g transform=\"translate({N((Icon - scale * sign.Width) / 2)} {N((Icon - scale * sign.Height) / 2)}) scale({N(scale)})\">{sign.Body}</g>";
    }
}

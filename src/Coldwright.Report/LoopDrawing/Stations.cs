using Coldwright.Machine.Description;
using Coldwright.Report.Charts;
using Coldwright.Report.Loops.Signs;

namespace Coldwright.Report.Loops;

/// <summary>The large parts of the room and the two exchangers: each ends the lines above it and starts those below.</summary>
internal sealed class Stations(Canvas canvas)
{
    private readonly LoopSize _size = canvas.Size;
    private readonly double _scale = canvas.Size.Scale;

    /// <summary>The compressor stands between the two lines of the loop; with an oil separator the discharge passes that first.</summary>
    public void Compressor(CompressorPart part, Track high, Track low, double head)
    {
        var sign = RoomSigns.Compressor(part.Type);
        var left = _size.HighX + (part.Oil is null ? 24 : 32) * _scale;
        var (outX, inX) = (left + sign.LineX * _scale, left + (sign.OutletX ?? sign.Width) * _scale);
        var textX = left + sign.Width * _scale + 8;
        var text = canvas.TextOf(part, _size.Right - textX);
        var suction = RoomSigns.SuctionY(part.Type) * _scale;
        // The words stand above the suction line, however many they are.
        var y = head + Math.Max(18, text.Height - suction + 12);
        var box = canvas.BoxOf(sign, outX, y);
        canvas.Add(part, sign, box);
        canvas.Add(part.Name, text, textX, y + suction - 8 - text.Height, false);
        low.Start((inX, y + suction), (low.X, y + suction));
        canvas.Packing.Take(new(inX, y + suction - 4, low.X - inX + 4, 8));
        var corner = y - 9;
        high.Start((outX, y + 3 * _scale), (outX, corner), (high.X, corner));
        canvas.Packing.Take(new(high.X - 4, corner - 3, outX - high.X + 8, 6));
        if (part.Oil is not null) OilSeparator(part, high, box);
    }

    private void OilSeparator(CompressorPart part, Track high, Box compressor)
    {
        var sign = RoomSigns.OilSeparator();
        var box = canvas.BoxOf(sign, high.X, compressor.Y + 12);
        var y = box.Bottom - 8 * _scale;
        canvas.OilReturn = [(box.Right, y), (compressor.X + 4 * _scale, y)];
        canvas.Accessory(high, part, sign, box);
    }

    /// <summary>The gas bottle stands left of the product's line, its words under it.</summary>
    public void Feed(FeedPart part, Track track, Line first, double head)
    {
        var sign = RoomSigns.Bottle();
        var box = canvas.BoxOf(sign, track.X - 8, head + 12);
        canvas.Add(part, sign, box);
        var text = canvas.TextOf(part, track.X - 10 - track.Edge);
        canvas.Add(part.Name, text, track.X - 10, box.Bottom + 4, true);
        track.Start((box.Right, box.Y + 6 * _scale), (track.X, box.Y + 6 * _scale));
        track.Y += 4;
        if (part.SupplyPressurePa is null) return;
        var pump = RoomSigns.FeedCompressor();
        var pumpBox = canvas.BoxOf(pump, track.X, 0);
        var words = new TextBlock(_size, track.X - 10 - track.Edge).Add("feed compressor", TextTone.Quiet);
        var y = canvas.Packing.Fit(box.Bottom + 4 + text.Height, pumpBox, Canvas.TextBox(words, pumpBox.X - 4, true));
        canvas.Add(part.Name, words, pumpBox.X - 4, y, true);
        canvas.Pass(track, part, pump, pumpBox with { Y = y }, first, isAccessory: true);
        track.Y = Math.Max(track.Y, y + words.Height);
    }

    /// <summary>An exchanger of both streams between their lines; its words stand inside the loop of the low-pressure line.</summary>
    public void Exchanger(Part part, Func<double, Sign> draw, double leastHeight, Track high, Line highLine, Track low, Line lowLine)
    {
        var (highPort, lowPort) = ExchangerSigns.Ports(part);
        var left = high.X + (_size.IsPhone ? 24 : 44);
        var right = left + ExchangerSigns.Width * _scale;
        var text = canvas.TextOf(part, low.X - right - 20);
        var height = Math.Max(leastHeight, (text.Height + 14) / _scale + 2 * lowPort);
        var sign = draw(height);
        var y = Math.Max(Math.Max(high.Y, low.Y) + 12, canvas.Packing.Bottom(high.X - 8, low.X + 8) + 10);
        var box = new Box(left, y, right - left, height * _scale);
        double h1 = y + highPort * _scale, h2 = box.Bottom - highPort * _scale, l1 = y + lowPort * _scale, l2 = box.Bottom - lowPort * _scale;
        canvas.Add(highLine, high.Form, high.To((high.X, h1), (left, h1)));
        canvas.Add(lowLine, low.Form, low.To((low.X, l1), (right, l1)));
        canvas.Add(part, sign, box);
        canvas.Add(part.Name, text, right + 8, (y + box.Bottom - text.Height) / 2, false);
        high.Start((left, h2), (high.X, h2));
        low.Start((right, l2), (low.X, l2));
        canvas.Packing.Take(new(high.X, h2 - 3, left - high.X, 6));
        canvas.Packing.Take(new(right, l2 - 3, low.X - right, 6));
    }

    /// <summary>The precooler around the high-pressure line and, when the product passes it, around that line too.</summary>
    public void Precooler(PrecoolerPart part, Track high, Line highLine, Track? product, Line? productLine)
    {
        var sign = ColdSigns.Precooler(product is null ? null : (high.X - product.X) / _scale);
        var box = canvas.BoxOf(sign, high.X, 0);
        var text = canvas.TextOf(part, high.Edge - box.Right - Canvas.TextGap);
        var textBox = Canvas.TextBox(text, box.Right + Canvas.TextGap, false);
        var height = Math.Max(box.Height, text.Height);
        box = box with { Y = (height - box.Height) / 2 };
        textBox = textBox with { Y = (height - text.Height) / 2 };
        var y = canvas.Packing.Fit(Math.Max(high.Y, product?.Y ?? 0) + Canvas.LineGap, box, textBox);
        canvas.Add(part.Name, text, textBox.X, y + textBox.Y, false);
        box = box with { Y = y + box.Y };
        if (product is not null)
        {
            canvas.Add(productLine!, product.Form, product.To((product.X, box.Y)));
            product.Start((product.X, box.Bottom));
        }
        canvas.Pass(high, part, sign, box, highLine);
        high.Y = Math.Max(high.Y, y + height);
    }
}

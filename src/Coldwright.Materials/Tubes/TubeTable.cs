using System.Globalization;
using System.Text.RegularExpressions;

namespace Coldwright.Materials.Tubes;

/// <summary>Copper tube sizes by the words a person uses.</summary>
/// <remarks>
/// <list type="bullet">
/// <item><c>3/8 in ACR</c>: refrigeration tube is named by its outside diameter.</item>
/// <item><c>1 in type M</c>: water tube is named by its trade size; the outside diameter is 1/8 in more.
/// A number that is no trade size but is the outside diameter of one means that tube, so
/// <c>2-1/8 in type L</c> is the trade size 2. Where a number is both (3/8, 1/2, 5/8, 3/4) it is the trade size;
/// <c>3/4 in OD type L</c> asks for the outside diameter.</item>
/// <item><c>6.35 x 0.8 mm</c> or <c>0.25 x 0.03 in</c>: outside diameter and wall.</item>
/// </list>
/// </remarks>
public static partial class TubeTable
{
    private const double InchM = 0.0254;
    private static readonly Lazy<IReadOnlyList<TubeSize>> Rows = new(ReadAll);

    /// <summary>Every tube of the built-in tables.</summary>
    public static IReadOnlyList<TubeSize> Sizes => Rows.Value;

    /// <summary>Finds a tube; false when the text is none of the accepted forms or the size is not in the tables.</summary>
    /// <param name="text">For example <c>3/8 in ACR</c>, <c>1 in type M</c>, <c>6.35 x 0.8 mm</c>.</param>
    /// <param name="outsideDiameterM">Outside diameter, m.</param>
    /// <param name="wallM">Nominal wall, m.</param>
    public static bool TryFind(string text, out double outsideDiameterM, out double wallM)
    {
        (outsideDiameterM, wallM) = (0, 0);
        var measured = Measured().Match(text);
        if (measured.Success) return TryMeasured(measured, out outsideDiameterM, out wallM);

        var named = Named().Match(text);
        if (!named.Success) return false;
        var inches = Inches(named.Groups["size"].Value);
        var series = named.Groups["type"].Success ? "type " + named.Groups["type"].Value.ToUpperInvariant() : "ACR";
        var byOutside = named.Groups["od"].Success;
        var row = byOutside ? null : Sizes.FirstOrDefault(s => s.Series == series && Near(Inches(s.Size), inches));
        row ??= Sizes.FirstOrDefault(s => s.Series == series && Near(s.OutsideDiameterM / InchM, inches));
        if (row is null) return false;
        (outsideDiameterM, wallM) = (row.OutsideDiameterM, row.WallM);
        return true;
    }

    private static bool TryMeasured(Match match, out double outsideDiameterM, out double wallM)
    {
        var unit = match.Groups["unit"].Value.ToLowerInvariant() == "mm" ? 1e-3 : InchM;
        outsideDiameterM = double.Parse(match.Groups["outside"].Value, CultureInfo.InvariantCulture) * unit;
        wallM = double.Parse(match.Groups["wall"].Value, CultureInfo.InvariantCulture) * unit;
        if (wallM > 0 && 2 * wallM < outsideDiameterM && double.IsFinite(outsideDiameterM)) return true;
        (outsideDiameterM, wallM) = (0, 0);
        return false;
    }

    /// <summary>3/8, 1-1/8, 2 or 0.375 as a number; NaN-free because the pattern admits digits only and a zero denominator matches no size.</summary>
    private static double Inches(string text)
    {
        var whole = 0.0;
        var dash = text.IndexOfAny(['-', ' ']);
        if (dash > 0)
        {
            whole = double.Parse(text[..dash], CultureInfo.InvariantCulture);
            text = text[(dash + 1)..];
        }
        var slash = text.IndexOf('/');
        return slash < 0
            ? whole + double.Parse(text, CultureInfo.InvariantCulture)
            : whole + double.Parse(text[..slash], CultureInfo.InvariantCulture) / double.Parse(text[(slash + 1)..], CultureInfo.InvariantCulture);
    }

    // 3/16 and 5/16 are listed as 0.187 and 0.312, so the comparison allows one thousandth of an inch.
    private static bool Near(double leftInch, double rightInch) => Math.Abs(leftInch - rightInch) < 0.001;

    private static List<TubeSize> ReadAll()
    {
        var rows = new List<TubeSize>();
        foreach (var (file, document) in EmbeddedData.Read("tubes"))
            using (document)
            {
                var root = document.RootElement;
                var source = EmbeddedData.Text(root.GetProperty("source"), "citation", file);
                var series = EmbeddedData.Text(root, "series", file);
                foreach (var row in root.GetProperty("tubes").EnumerateArray())
                    rows.Add(new TubeSize(EmbeddedData.Text(row, "size", file), series,
                        row.GetProperty("outside_in").GetDouble() * InchM, row.GetProperty("wall_in").GetDouble() * InchM, source));
            }
        return rows;
    }

    [GeneratedRegex(@"^\s*(?<outside>\d{1,6}(\.\d{1,9})?)\s*[x×]\s*(?<wall>\d{1,6}(\.\d{1,9})?)\s*(?<unit>mm|in)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Measured();

    [GeneratedRegex(@"^\s*(?<size>\d{1,3}[- ]\d{1,3}/\d{1,3}|\d{1,3}/\d{1,3}|\d{1,3}(\.\d{1,6})?)\s*(in|inch|"")\s+(?<od>OD\s+)?(ACR|type\s+(?<type>[KLM]))\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Named();
}

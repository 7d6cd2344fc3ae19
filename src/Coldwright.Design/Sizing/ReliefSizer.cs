using Coldwright.Machine.Description;
using Coldwright.Quantities;
using Coldwright.Safety;
using Coldwright.Safety.Layout;
using Coldwright.Safety.Relief;
using Coldwright.Safety.Rules;

namespace Coldwright.Design.Sizing;

/// <summary>Bore of a relief device, by the same rule that a finished machine is held against.</summary>
internal static class ReliefSizer
{
    private static readonly double[] _boresMm = [1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20];

    public static SizeResult Size(SizeContext c, ReliefPart part)
    {
        var inputs = CautionInputs.Of(c.Machine, c.Shop, c.Loop);
        var told = new List<string>();
        var needs = ReliefSizeRule.Needs(new MachineLayout(c.Machine), inputs, told, c.Cancel).Where(n => n.Reliefs.Any(r => r.Name == part.Name)).ToArray();
        if (needs.Length == 0) throw new ArgumentException($"'{part.Name}' guards nothing that holds liquid or takes the compressor's discharge, or sizes are missing in the file: there is nothing to size it for", nameof(part));
        var (need, fire) = (needs.Max(n => n.NeedM), needs.Max(n => n.FireM));
        c.Said.AddRange(Spoken.All(told));
        if (needs.Any(n => n.Reliefs.Count > 1)) c.Said.Add($"'{part.Name}' shares its volume with other devices: it is sized as if it were alone");
        var options = _boresMm.Select(mm => new SizeOption
        {
            Stock = FormattableString.Invariant($"{mm} mm"),
            Figures = [new("bore_m", "Least bore of device and line", 1e-3 * mm, "m"), new("over_need", "Area over that needed", Math.Pow(1e-3 * mm / need, 2), "1"), new("over_fire", "Area over that in a fire", Math.Pow(1e-3 * mm / fire, 2), "1")],
            Cut = [new(FormattableString.Invariant($"relief device of {mm} mm bore or more, set at {(part.SetPressurePa - c.RoomPa) / 1e5:0.##} bar gauge"), 1, "piece")],
            Keys = [("bore", FormattableString.Invariant($"{mm} mm"))],
            WhyNot = 1e-3 * mm < Math.Max(need, fire) ? "too narrow" : "",
        });
        return new SizeResult
        {
            Part = part.Name,
            Kind = "relief",
            Target = new("bore_m", "Bore needed", Math.Max(need, fire), "m"),
            TargetRemark = string.Join("; ", needs.Select(n => n.Words).Distinct()),
            Method = "what heat or the compressor drives out at a tenth over the set pressure, through a plain opening",
            Options = SizeContext.Sorted(options, "bore_m"),
            Columns = ["bore_m", "over_need", "over_fire"],
            Sources = [.. needs.Select(n => n.Source).Append(GasReliefArea.Source).Distinct()],
            Warnings = ["a relief device is bought with its certificate, set and sealed by its maker; the line to it is as wide as itself, short, and has no valve"],
        };
    }
}

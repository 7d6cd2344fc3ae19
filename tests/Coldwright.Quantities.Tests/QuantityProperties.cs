using System.Globalization;
using Coldwright.Quantities;
using CsCheck;
using Xunit;

namespace Coldwright.Quantities.Tests;

/// <summary>What must hold for every number and every text.</summary>
public sealed class QuantityProperties
{
    private static readonly Gen<double> _number = Gen.Double[-1e6, 1e6].Where(x => Math.Abs(x) > 1e-6);

    [Fact]
    public void EveryUnitWordScalesWithTheNumber()
    {
        foreach (var (word, unit) in UnitTable.Words)
        {
            if (unit.Reference is not UnitReference.None) continue;
            var kind = new QuantityKind { Name = "a trial", Dimension = unit.Dimension, SiUnit = "", Example = "1", Scale = Bare(unit) };
            _number.Sample(x =>
            {
                var text = x.ToString("R", CultureInfo.InvariantCulture) + " " + word;
                Assert.True(Quantity.TryParse(text, kind, 1e5, out var si, out var problem), problem?.Message);
                Assert.Equal(x * unit.Factor, si, Math.Abs(x * unit.Factor) * 1e-14);
            }, iter: 20, seed: "0000000000001");
        }

        static QuantityScale Bare(Unit unit) => unit.Dimension == QuantityKind.Pressure.Dimension ? QuantityScale.PressureDifference : QuantityScale.Amount;
    }

    [Fact]
    public void GaugeAndAbsoluteDifferByTheRoom() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[5e4, 1.1e5]).Sample((bar, room) =>
        {
            var text = bar.ToString("R", CultureInfo.InvariantCulture);
            Assert.True(Quantity.TryParse(text + " barg", QuantityKind.Pressure, room, out var gauge, out _));
            if (!Quantity.TryParse(text + " bara", QuantityKind.Pressure, room, out var absolute, out _)) return;
            Assert.Equal(room, gauge - absolute, 1e-6);
        });

    [Fact]
    public void SiAndBackReturnsTheNumber() =>
        _number.Sample(x =>
        {
            foreach (var word in (string[])["°C", "°F", "K", "barg", "psig", "bara", "mm", "BTU/h"])
            {
                Assert.True(UnitTable.TryFindWord(word, out var unit));
                Assert.Equal(x, unit.FromSi(unit.ToSi(x, 98000), 98000), 1e-9 * Math.Abs(x) + 1e-7);
            }
        });

    [Fact]
    public void MixedFractionsAddUp() =>
        Gen.Select(Gen.Int[0, 20], Gen.Int[1, 63], Gen.Int[2, 64]).Sample((whole, numerator, denominator) =>
        {
            Assert.True(Quantity.TryParse($"{whole}-{numerator}/{denominator} in", QuantityKind.Length, 1e5, out var value, out _));
            Assert.Equal((whole + (double)numerator / denominator) * 0.0254, value, 1e-12);
        });

    [Fact]
    public void AnyTextIsAValueOrAProblemAndNeverAnException() =>
        Gen.Select(Gen.String[Gen.Char["0123456789.,-+−/ °CKFbargpsimPWhJ()%eE\u00A0²³µΔ\"'{}\n"], 0, 30], Gen.Int[0, 100]).Sample((text, pick) =>
        {
            var kinds = Kinds.All.ToArray();
            var good = Quantity.TryParse(text, kinds[pick % kinds.Length], 1e5, out var value, out var problem);
            Assert.Equal(good, problem is null);
            Assert.Equal(good, double.IsFinite(value));
        }, iter: 20000);
}

using Coldwright.Design.Blending;
using Coldwright.Quantities;

namespace Coldwright.Web.Orders;

/// <summary>The fields beside the search for a mixture.</summary>
internal static class BlendOrder
{
    private const int FewestGases = 2, MostGases = 8;

    public static BlendOptions Read(OrderReader order, bool cubic)
    {
        var gases = order.Gases("gases", "gases");
        if (gases.Count is not 0 and (< FewestGases or > MostGases)) order.Refuse($"gases: {gases.Count}; {FewestGases} to {MostGases} are expected");
        var limits = new BlendLimits();
        var options = new BlendOptions
        {
            Goal = order.Text("goal") switch { "litres" => BlendGoal.Litres, "lowest" => BlendGoal.Lowest, "endless" => BlendGoal.Endless, _ => BlendGoal.Cooling },
            TemperatureK = order.Value("at", "load temperature", QuantityKind.Temperature.Between(62, 290)),
            Gases = gases,
            Reference = !cubic,
            Limits = limits with
            {
                Flammable = order.Value("burns", "share that burns", QuantityKind.Fraction),
                PricePerKg = order.Value("price", "price of a kilogram", QuantityKind.PricePerMass),
                DischargeK = order.Value("discharge", "hottest discharge", QuantityKind.Temperature.Between(300, 500)),
                FreezingMargin = order.Value("margin", "freezing margin", QuantityKind.Number.Between(0, 100)) ?? limits.FreezingMargin,
                OneLiquid = order.Tick("one-liquid"),
            },
        };
        if (order.Value("error", "filling error", QuantityKind.Fraction.Between(0, 0.05)) is { } error) options = options with { FillingError = error };
        order.Close();
        return options;
    }
}

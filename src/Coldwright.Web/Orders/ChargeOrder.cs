using Coldwright.Design.Charging;
using Coldwright.Quantities;

namespace Coldwright.Web.Orders;

/// <summary>The fields beside the filling plan.</summary>
internal static class ChargeOrder
{
    public static ChargeOptions Read(OrderReader order, double roomPressurePa)
    {
        var options = new ChargeOptions
        {
            Mixture = order.Mixture("mixture", "mixture"),
            MassKg = order.Value("mass", "mass", QuantityKind.Mass.Between(1e-3, 100)),
            VacuumPa = order.Value("vacuum", "what the pump leaves", QuantityKind.AbsolutePressure.Between(0.01, 0.5 * roomPressurePa)),
            Rinses = order.Count("rinses", "rinses", 0, 10),
            LostKg = order.Value("lost", "leaked out", QuantityKind.Mass.Between(1e-6, 100)),
            NowPa = order.Value("now", "gauge at rest now", QuantityKind.Pressure.Between(0.1 * roomPressurePa, 1e8)),
            Circulation = !order.Tick("warm-only"),
        };
        if (order.Value("scale", "scale", QuantityKind.Mass.Between(1e-6, 1)) is { } kg) options = options with { ScaleKg = kg };
        if (order.Value("gauge", "gauge", QuantityKind.PressureDifference.Between(1, 1e6)) is { } pa) options = options with { GaugePa = pa };
        order.Close();
        return options;
    }
}

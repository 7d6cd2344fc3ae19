using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Feed;

/// <summary>
/// The tube between drain valve and flask: metal at one temperature, cooled by liquid and vapour that pass it, warmed by the room. While it is warm the wall stays
/// dry and the drops float: the film is that of the vapour at the speed of the whole stream, Nu = 0.023 (Re_g [x + (1 - x) rho_g/rho_l])^0.8 Pr_g^0.4, the form
/// of R. S. Dougall, W. M. Rohsenow (MIT report 9079-26, 1963; from memory, some +-30 %). It is used until the wall is cold: late rather than early.
/// </summary>
public sealed class DrainLine
{
    // Our assumption: bare tube in a room, free convection, radiation and frost together.
    private const double RoomFilm = 10;

    private readonly double _bore, _length, _viscosity, _conductivity, _prandtl, _densityRatio, _area;

    /// <param name="boreM">Bore, m.</param>
    /// <param name="outsideM">Outside diameter, m.</param>
    /// <param name="lengthM">m.</param>
    /// <param name="massKg">Metal cooled with it, valve body included, kg.</param>
    /// <param name="product">The pure product.</param>
    /// <param name="roomPa">Pressure in it, Pa.</param>
    public DrainLine(double boreM, double outsideM, double lengthM, double massKg, ProductFluid product, double roomPa)
    {
        (_bore, _length) = (InputCheck.Within(boreM, 1e-4, 0.1, "m", nameof(boreM)), InputCheck.Within(lengthM, 0, 100, "m", nameof(lengthM)));
        MassKg = massKg;
        RoomConductanceWPerK = RoomFilm * Math.PI * outsideM * lengthM;
        var (vapour, liquid) = (product.Saturated(roomPa, 1), product.Saturated(roomPa, 0));
        double t = product.Saturation(roomPa)!.Value.TemperatureK;
        var transport = new TransportModel(product.Model).At(t, vapour.MolarDensity, [1.0]);
        (_viscosity, _conductivity) = (transport.Viscosity.Value, transport.Conductivity.Value);
        _prandtl = vapour.MolarHeatCapacity / product.MolarMass * _viscosity / _conductivity;
        _densityRatio = vapour.MolarDensity / liquid.MolarDensity;
        _area = Math.PI / 4 * boreM * boreM;
    }

    /// <summary>kg.</summary>
    public double MassKg { get; }
    /// <summary>From the room into it, W/K.</summary>
    public double RoomConductanceWPerK { get; }

    /// <summary>Conductance between wall and stream, W/K.</summary>
    /// <param name="flowKgPerS">Whole stream, kg/s.</param>
    /// <param name="vapourShare">kg/kg behind the valve.</param>
    public double StreamConductanceWPerK(double flowKgPerS, double vapourShare)
    {
        if (flowKgPerS <= 0) return 0;
        double reynolds = flowKgPerS / _area * _bore / _viscosity * (vapourShare + (1 - vapourShare) * _densityRatio);
        // laminar flow carries heat too
        double nusselt = 3.66 + 0.023 * Math.Pow(reynolds, 0.8) * Math.Pow(_prandtl, 0.4);
        return nusselt * _conductivity * Math.PI * _length;
    }
}

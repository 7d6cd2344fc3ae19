using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.ColdVessel;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Tests.ColdVessel;

/// <summary>Coils, vessels, contents and mixtures that several tests use. Dimensions are our own.</summary>
internal static class ColdVesselSamples
{
    public static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    public static readonly double[] Blend = [0.38, 0.26, 0.16, 0.12, 0.08];
    public const double LowPa = 3.5e5;

    private static readonly Lazy<StreamTable> LowTable = new(() =>
    {
        var model = ReferenceModel.Create(Names);
        return StreamTable.Create(new Flash(model), new TransportModel(model), Blend, [2.5e5, LowPa], 84, 200);
    });

    private static readonly Lazy<VesselProduct> NitrogenContent = new(() => Pure("nitrogen", 12e5));

    /// <summary>The mixture behind the throttle.</summary>
    public static StreamTable Low => LowTable.Value;
    /// <summary>Nitrogen at 12 bar absolute: saturated at 106.6 K.</summary>
    public static VesselProduct Nitrogen => NitrogenContent.Value;

    public static VesselProduct Pure(string gas, double pressurePa, double coldestK = 80) => Of([gas], [1], pressurePa, coldestK);

    public static VesselProduct Of(string[] names, double[] z, double pressurePa, double coldestK = 80)
    {
        var model = ReferenceModel.Create(names);
        return VesselProduct.Create(new Flash(model), new TransportModel(model), z, pressurePa, coldestK, 300);
    }

    /// <summary>2-1/8 in tube, 250 mm long.</summary>
    public static VesselGeometry Vessel { get; } = new() { OutsideDiameterM = 0.05398, WallM = 0.00178, LengthM = 0.25, Caps = CapForm.Ellipsoidal };

    /// <summary>1.8 m of 6.35 mm tube, 37 mm mean diameter, 200 mm high.</summary>
    public static ColdCoilGeometry Coil { get; } = new()
    {
        OutsideDiameterM = 0.00635, WallM = 0.00076, LengthM = 1.8, CoilDiameterM = 0.037, PitchM = ColdCoilGeometry.PitchFromHeight(1.8, 0.037, 0.2), BottomM = 0.02,
    };

    public static ColdVesselInput Case(double levelM = 0.08, double mixtureK = 99, double flow = 0.03) => new()
    {
        Coil = Coil, Vessel = Vessel, Product = Nitrogen, LevelM = levelM, Mixture = StreamInlet.AtTemperature(Low, flow, mixtureK, LowPa),
    };

    /// <summary>Fixed films, no pressure drop: for exact solutions.</summary>
    public static ColdVesselOptions Plain(double inside, double outside, int cells = 48) => new()
    {
        Cells = cells, PressureDrop = false, Band = false, Inside = new SideOptions(inside), Condensing = new SideOptions(outside), Convection = new SideOptions(outside),
    };

    public static ColdVesselResult Solve(this ColdVesselInput input) => ColdVesselModel.Solve(input, TestContext.Current.CancellationToken);

    /// <summary>Resistance of the coil's wall, K m/W.</summary>
    public static double WallResistance(double atK) => Math.Log(Coil.OutsideDiameterM / Coil.BoreM) / (2 * Math.PI * SolidLibrary.Default.Find(Coil.Material).Conductivity(atK).Value);
}

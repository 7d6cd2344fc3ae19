using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Fluids.PhaseEquilibrium;
using Coldwright.Fluids.Transport;
using Coldwright.Machine.Recuperation;
using Coldwright.Machine.Streams;
using Coldwright.Materials.Solids;

namespace Coldwright.Machine.Tests.Recuperation;

/// <summary>Exchangers and streams that several tests use.</summary>
internal static class RecuperatorSamples
{
    public static readonly string[] Names = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    public static readonly double[] Blend = [0.30, 0.25, 0.18, 0.15, 0.12];
    public const double GasPressurePa = 5e5, HighPa = 18e5, LowPa = 4.5e5;

    private static readonly Lazy<(StreamTable High, StreamTable Low)> BlendTables = new(() =>
    {
        var model = ReferenceModel.Create(Names);
        var (flash, transport) = (new Flash(model), new TransportModel(model));
        return (StreamTable.Create(flash, transport, Blend, [16e5, HighPa], 90, 310), StreamTable.Create(flash, transport, Blend, [3.6e5, LowPa], 90, 310));
    });

    /// <summary>Constant properties: 28 J/(mol K), 5 kg/m3.</summary>
    public static StreamTable Gas { get; } = StreamTable.Constant(new PhaseTransport(5, 1e-5, 0.02, 1000), 0.028, GasPressurePa, 20, 400);

    public static StreamTable High => BlendTables.Value.High;
    public static StreamTable Low => BlendTables.Value.Low;

    /// <summary>One tube in a tube, straight.</summary>
    public static TubeInTubeGeometry Simple(double lengthM = 10) => new(0.0064, 0.0008, 1, 0.0127, 0.0008, lengthM);

    /// <summary>Three tubes in a tube, coiled.</summary>
    public static TubeInTubeGeometry Coiled(double lengthM = 12) => new(0.00476, 0.00076, 3, 0.0159, 0.00102, lengthM, 0.25);

    /// <summary>A metal of one conductivity, W/(m K).</summary>
    public static SolidMaterial Metal(double conductivity) =>
        new("test-metal", "metal of constant conductivity", [],
            new MaterialProperty("conductivity of test-metal", "none: a test's own", Provenance.Published, 0, "", [new PointsCurve([1, 1000], [conductivity, conductivity])]));

    /// <summary>Fixed films, no pressure drop, no conduction along the metal: the exact solutions' exchanger.</summary>
    public static RecuperatorOptions Plain(int cells, double hotFilm = 3000, double coldFilm = 2000) => new()
    {
        Cells = cells, PressureDrop = false, AxialConduction = false, Band = false, GridError = false, Hot = new SideOptions(hotFilm), Cold = new SideOptions(coldFilm),
    };

    public static RecuperatorResult Solve(this DistributedRecuperator recuperator, double hotFlow, double hotK, double coldFlow, double coldK) =>
        recuperator.Solve(StreamInlet.AtTemperature(Gas, hotFlow, hotK, GasPressurePa), StreamInlet.AtTemperature(Gas, coldFlow, coldK, GasPressurePa));

    public static RecuperatorResult SolveBlend(this DistributedRecuperator recuperator, double flow, double coldK = 105, double ratio = 1, double hotK = 298) =>
        recuperator.Solve(StreamInlet.AtTemperature(High, flow, hotK, HighPa), StreamInlet.AtTemperature(Low, flow * ratio, coldK, LowPa));
}

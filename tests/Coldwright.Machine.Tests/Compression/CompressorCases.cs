using Coldwright.Fluids.EquationsOfState;
using Coldwright.Fluids.EquationsOfState.MultiFluid;
using Coldwright.Machine.Compression;

namespace Coldwright.Machine.Tests.Compression;

/// <summary>Machines and gases that several tests use.</summary>
internal static class CompressorCases
{
    public static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static readonly string[] MixtureNames = ["nitrogen", "methane", "ethane", "propane", "isobutane"];
    public static readonly double[] Mixture = [0.30, 0.25, 0.20, 0.15, 0.10];

    public static CompressorMachine Machine(CompressorKind kind, double cm3 = 15) => new() { Traits = CompressorTraits.For(kind), DisplacementM3 = cm3 * 1e-6 };

    /// <summary>Every loss off: what is left is a displacement and an isentrope.</summary>
    public static CompressorMachine Lossless(double clearance = 0) => new()
    {
        Traits = CompressorTraits.For(CompressorKind.Reciprocating) with
        {
            ClearanceFraction = clearance, LeakageAreaFactor = 0, SuctionPortFactor = 1, DischargePortFactor = 1, SuctionHeating = 0, DischargeExchange = 0,
            FrictionPressurePa = 0, FrictionShare = 0, MotorConstantLoss = 0, MotorQuadraticLoss = 0, RatedSlip = 0,
        },
        DisplacementM3 = 15e-6,
    };

    public static CompressorPerformance Run(CompressorMachine machine, HelmholtzModel model, double[] z, double suctionK, double suctionPa, double dischargePa, double roomK = 298.15) =>
        new HermeticCompressor(machine, model, z).Run(new CompressorDuty { SuctionTemperatureK = suctionK, SuctionPressurePa = suctionPa, DischargePressurePa = dischargePa, RoomTemperatureK = roomK }, Stop);

    public static CompressorPerformance OnPure(CompressorMachine machine, string gas, double suctionK, double suctionPa, double dischargePa, double roomK = 298.15) =>
        Run(machine, ReferenceModel.Create([gas]), [1], suctionK, suctionPa, dischargePa, roomK);

    public static CompressorPerformance OnMixture(CompressorMachine machine, double suctionPa, double ratio) =>
        Run(machine, ReferenceModel.Create(MixtureNames), Mixture, 295, suctionPa, ratio * suctionPa);
}

using Coldwright.Machine.Description;
using Coldwright.Machine.Files;

namespace Coldwright.Machine.Tests.Files;

public sealed class ExampleFoldersAreGood
{
    public static TheoryData<string> Folders => [.. Directory.GetDirectories(Examples.Folder()).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Folders))]
    public void NoProblemAndALayout(string folder)
    {
        var read = MachineFolderReader.Read(Examples.Folder(folder));
        Assert.Empty(read.Problems);
        Assert.NotNull(read.Machine);
        Assert.NotNull(read.Layout);
        Assert.True(read.IsGood);
    }

    [Fact]
    public void TheWorkshopIsReadInSi()
    {
        var read = MachineFolderReader.Read(Examples.Folder("workshop"));
        Assert.Empty(read.Notes);
        var (machine, layout, shop) = (read.Machine!, read.Layout!, read.Shop!);
        Assert.Equal(293.15, machine.Room.TemperatureK, 1e-9);
        Assert.Equal(100800, machine.Room.PressurePa, 1e-6);
        Assert.Equal(1.5, machine.Room.AirChangesPerHour, 1e-9);
        // Gauge pressures count from this room's barometer, not from the standard atmosphere.
        Assert.Equal(17.5e5 + 100800, machine.Operation.HighPressurePa, 1e-6);
        Assert.Equal(10.8e-6, layout.Compressor.DisplacementM3!.Value, 1e-15);
        Assert.Equal(47.5, layout.Compressor.SpeedRevPerS!.Value, 1e-9);
        Assert.Equal([2.0, 4, 6, 10], layout.Compressor.IsentropicEfficiency.Select(e => e.Ratio));
        Assert.Equal(0.009525, layout.Recuperator.HighTube!.OutsideDiameterM, 1e-9);
        Assert.Equal(238.15, layout.Precooler!.OutletTemperatureK, 1e-9);
        Assert.Equal((0.26, 0.22, 0.34), layout.ColdBox!.Inside);
        Assert.Equal(2, layout.ColdBox.Penetrations.Count);
        Assert.True(layout.FeedPrecooled);
        Assert.Equal(0.31, shop.ElectricityPerKWh, 1e-12);
        Assert.Equal(2.40, shop.BoughtLiquidPerL["nitrogen"], 1e-12);
        Assert.Equal(0.999, shop.GasPurity["nitrogen"], 1e-12);
    }

    [Fact]
    public void TheLoopIsFollowedPortByPort()
    {
        var layout = MachineFolderReader.Read(Examples.Folder("workshop")).Layout!;
        Assert.Equal(["compressor", "aftercooler", "warm-exchanger.high", "precooler.high", "recuperator.high", "throttle", "coil", "recuperator.low", "warm-exchanger.low", "compressor"],
            layout.LoopPath.Select(s => s.Port));
        Assert.Equal(["bottle", "fill-valve", "precooler.feed", "vessel", "drain-valve", "flask"], layout.ProductPath.Select(s => s.Port));
        Assert.IsType<FlaskPart>(layout.ProductPath[^1].Part);
        Assert.All(layout.LoopPath.Skip(1), s => Assert.Equal(s.Port, s.Line!.To));
    }
}

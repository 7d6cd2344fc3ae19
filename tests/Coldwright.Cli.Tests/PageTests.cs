using System.Net;

namespace Coldwright.Cli.Tests;

/// <summary><c>page DIR</c> from the command line; the page itself is tested in Coldwright.Web.Tests.</summary>
public class PageTests
{
    [Fact]
    public void ItServesUntilItIsEnded()
    {
        using var folder = new TemporaryFolder();
        folder.Write("machine.yaml", File.ReadAllText(Path.Combine(Repository.Example("workshop"), "machine.yaml")));
        using var end = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        var run = CliRun.Of(end.Token, "page", folder.Path, "--no-browser").MustSucceed();
        Assert.Matches(@"^The page: http://127\.0\.0\.1:\d+/\n", run.Output);
        Assert.EndsWith("every change is in the files.\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(["machine.yaml"], folder.Names);
    }

    [Fact]
    public void OpenedToTheNetworkItPrintsAToken()
    {
        using var end = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        var run = CliRun.Of(end.Token, "page", Repository.Example("workshop"), "--no-browser", "--host", "0.0.0.0").MustSucceed();
        Assert.Matches(@"^The page: http://127\.0\.0\.1:\d+/\?token=[0-9a-f]{20}\n", run.Output);
    }

    [Fact]
    public void AFolderThatIsNoCoolersIsRefused()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of("page", folder.Path, "--no-browser").MustRefuse("machine.yaml");
        CliRun.Of("page", folder["nowhere"], "--no-browser").MustRefuse("nowhere");
    }

    [Theory]
    [InlineData("--host", "workshop.local")]
    [InlineData("--host", "203.0.113.9")]
    [InlineData("--port", "70000")]
    public void AnAddressThatCannotBeUsedIsRefused(string option, string value) =>
        CliRun.Of("page", Repository.Example("workshop"), "--no-browser", option, value).MustRefuse(option, value);

    [Fact]
    public void APortThatIsTakenIsRefused()
    {
        using var other = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port.ToString(System.Globalization.CultureInfo.InvariantCulture);
        CliRun.Of("page", Repository.Example("workshop"), "--no-browser", "--port", port).MustRefuse("--port", port);
    }
}

using System.CommandLine;
using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Coldwright.Machine.Files;
using Coldwright.Web;

namespace Coldwright.Cli.Commands;

/// <summary><c>page DIR</c>: the cooler's page in the browser.</summary>
internal static class PageCommand
{
    public static Command Create(Terminal terminal)
    {
        var directory = new Argument<string>("DIR") { Description = "the folder that holds machine.yaml" };
        var host = new Option<string?>("--host") { HelpName = "ADDRESS", Description = "let others in: this computer's address in the local network, or 0.0.0.0 for all of them; a token is then asked for" };
        var port = new Option<int?>("--port") { HelpName = "N", Description = "port; any that is free when left out" };
        var quiet = new Option<bool>("--no-browser") { Description = "only print the address" };
        var command = new Command("page", "Open the cooler's page in the browser: see it, change it, rate it.") { directory, host, port, quiet };
        command.SetAction(p => Run(p.GetRequiredValue(directory), p.GetValue(host), p.GetValue(port), p.GetValue(quiet), Faces.Of(p, terminal)));
        return command;
    }

    private static int Run(string directory, string? host, int? port, bool noBrowser, Faces faces)
    {
        faces.SayUnused("page", report: false, model: false);
        // Problems inside the file are shown on the page, where they are mended; a folder without a file cannot be.
        if (!File.Exists(Path.Combine(directory, MachineFolderReader.MachineFile))) throw MachineFiles.Refusal(MachineFolderReader.Read(directory));
        if (port is < 1 or > 65535) throw new InputException("--port", $"{port} is no port; 1 to 65535 are");
        var address = Address(host);
        var options = new PageOptions { Directory = directory, Address = address, Port = port ?? 0, Token = IPAddress.IsLoopback(address) ? null : Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(10)) };
        return Serve(options, noBrowser, faces).GetAwaiter().GetResult();
    }

    private static async Task<int> Serve(PageOptions options, bool noBrowser, Faces faces)
    {
        PageServer server;
        try
        {
            server = await PageServer.Start(options);
        }
        catch (Exception e) when (e is IOException or SocketException)
        {
            throw new InputException(options.IsOpen ? "--host" : "--port", $"{options.Address} port {options.Port} cannot be used: {e.Message}");
        }
        await using (server)
        {
            var output = faces.Terminal.Output;
            var local = server.Url.Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal).Replace("[::]", "127.0.0.1", StringComparison.Ordinal);
            var url = options.Token is { } token ? $"{local}?token={token}" : local;
            output.WriteLine($"The page: {url}");
            if (options.Token is not null)
                foreach (var other in Others(options.Address, new Uri(server.Url).Port)) output.WriteLine($"From another device: {other}?token={options.Token}");
            output.WriteLine("Ctrl-C ends it.");
            output.Flush();
            if (!noBrowser) Open(url, faces);
            // A service manager ends programs with this signal; it means the same as Ctrl-C.
            using var end = CancellationTokenSource.CreateLinkedTokenSource(faces.Terminal.Cancel);
            using var signal = PosixSignalRegistration.Create(PosixSignal.SIGTERM, s =>
            {
                s.Cancel = true;
                end.Cancel();
            });
            try
            {
                await Task.Delay(Timeout.Infinite, end.Token);
            }
            catch (OperationCanceledException)
            {
                output.WriteLine("The page is closed; every change is in the files.");
            }
        }
        return ExitCode.Done;
    }

    private static IPAddress Address(string? host) => host switch
    {
        null or "localhost" => IPAddress.Loopback,
        _ when IPAddress.TryParse(host, out var address) => address,
        _ => throw new InputException("--host", $"'{Faces.Shorten(host)}' is no address such as 192.168.1.20 or 0.0.0.0"),
    };

    // Told by number: a name would have to be looked up by whoever types it.
    private static IEnumerable<string> Others(IPAddress address, int port)
    {
        if (!address.Equals(IPAddress.Any) && !address.Equals(IPAddress.IPv6Any)) return [$"http://{(address.AddressFamily == AddressFamily.InterNetworkV6 ? $"[{address}]" : address)}:{port}/"];
        return Dns.GetHostAddresses(Dns.GetHostName()).Where(a => a.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(a)).Select(a => $"http://{a}:{port}/");
    }

    private static void Open(string url, Faces faces)
    {
        try
        {
            Process.Start(new ProcessStartInfo(url) { UseShellExecute = true })?.Dispose();
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            faces.Terminal.Note("no browser could be opened from here; open the address yourself");
        }
    }
}

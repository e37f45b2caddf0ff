using System.Net;
using System.Net.Sockets;
using AutoSweep.Core;
using AutoSweep.Instruments.Discovery;
using AutoSweep.Instruments.Links.Visa;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Commands;
using Microsoft.Extensions.Time.Testing;

namespace AutoSweep.Worker.Tests.Commands;

public sealed class InstrumentsCommandTests
{
    private readonly StringWriter _text = new() { NewLine = "\n" };

    [Fact]
    public async Task The_names_are_listed_each_alone_on_its_line_and_nothing_is_sent()
    {
        await RunAsync(ask: false);
        Assert.Equal(
            """
            ASRL/dev/ttyNone0::INSTR
                serial port /dev/ttyNone0
            No VISA library on this computer (looked for libno-such-visa.so). GPIB, VXI-11 and HiSLIP need one.
            Nothing was sent to any of them. --ask sends *IDN? and shows who answers; a LAN socket has to be named.

            """, _text.ToString());
    }

    [Fact]
    public async Task Asked_a_resource_shows_who_answers_and_which_driver_fits()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var served = AnswerAsync(listener, "INVENTED,34401A,0,1.0\n");
        var resource = FormattableString.Invariant($"127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}");
        await RunAsync(ask: true, resource);
        await served;
        Assert.Equal(
            $"""
            {resource}
                answers INVENTED,34401A,0,1.0
                driver: test-meter

            """, _text.ToString());
    }

    [Fact]
    public async Task Asked_a_port_that_does_not_open_says_why_and_the_list_goes_on()
    {
        await RunAsync(ask: true);
        Assert.Contains("    no serial port /dev/ttyNone0", _text.ToString(), StringComparison.Ordinal);
        Assert.Contains("No VISA library", _text.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slip_in_a_name_is_told_before_anything_is_asked()
    {
        await Assert.ThrowsAsync<BenchFaultException>(() => RunAsync(ask: true, "/dev/ttyNone0", "TCPIQ::x"));
        Assert.Empty(_text.ToString());
    }

    [Fact]
    public async Task Resources_without_the_leave_to_ask_them_are_bad_usage() =>
        Assert.Equal(JobOutcome.BadUsage, await RootCommandLine.RunAsync(["instruments", "127.0.0.1:5025"]));

    private static async Task AnswerAsync(TcpListener listener, string answer)
    {
        using var client = await listener.AcceptTcpClientAsync();
        using var reader = new StreamReader(client.GetStream());
        Assert.Equal("*IDN?", await reader.ReadLineAsync());
        await client.GetStream().WriteAsync(System.Text.Encoding.ASCII.GetBytes(answer));
        Assert.Null(await reader.ReadLineAsync());
    }

    private Task RunAsync(bool ask, params string[] named)
    {
        var search = new InstrumentSearch
        {
            SerialPorts = new(() => ["/dev/ttyNone0"], "/no/such/folder"),
            Usb = new("/no/such/folder", "/dev"),
            Visa = new VisaLibraryNames(["libno-such-visa.so"]),
        };
        // No time passes: an answer that a busy machine brings late is still an answer.
        return InstrumentsCommand.RunAsync(search, new() { Drivers = Drivers(), Time = new FakeTimeProvider() }, named, ask, _text, default);
    }

    private static Instruments.Meters.DriverLibrary Drivers()
    {
        var folder = Directory.CreateTempSubdirectory("autosweep-drivers-").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "test-meter"));
        File.WriteAllText(Path.Combine(folder, "test-meter", "driver.json"), """
            {
              "name": "test-meter", "title": "a meter for tests", "identity": [ { "maker": "INVENTED", "model": "34401*" } ],
              "link": {}, "setUp": [],
              "frequency": { "setUp": [], "apertureSeconds": 0.1, "settleSeconds": 0.5, "source": "test", "read": "READ?" }
            }
            """);
        return new(folder);
    }
}

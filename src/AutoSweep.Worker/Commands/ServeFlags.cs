using System.CommandLine;
using System.CommandLine.Parsing;
using System.Net;
using AutoSweep.Worker.Page;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags of the bench page: where it listens, where its data lie, which bench.</summary>
public sealed class ServeFlags
{
    // Beside a real bench's wiring in one data folder neither writes over the other.
    private const string SimulatedWiring = "simulated-bench.json";

    private readonly Option<string?> _data = new("--data")
    {
        Description = "The folder of jobs, stock, wiring and shop. Left out: this user's data folder; with --simulated: simulated-bench/ in it.",
        HelpName = "DIR",
    };
    private readonly Option<string> _address = new("--address")
    {
        Description = "The address to listen on. Another than loopback lets other computers look, and asks them for a token.",
        HelpName = "IP",
        DefaultValueFactory = _ => "127.0.0.1",
    };
    private readonly Option<int> _port = new("--port")
    {
        Description = "The port; 0 for any free one.", HelpName = "N", DefaultValueFactory = _ => BenchPageOptions.DefaultPort,
    };
    private readonly Option<bool> _simulated = new("--simulated")
    {
        Description = "Needs no hardware: a simulated bench with an invented generator is wired up.",
    };
    private readonly Option<string> _simBench = new("--sim-bench")
    {
        Description = "With --simulated: which bench; docs/simulated-bench.md lists them.", HelpName = "NAME", DefaultValueFactory = _ => "demo",
    };
    private readonly Option<bool> _newToken = new("--new-token")
    {
        Description = "With another address than loopback: makes a new token. Screens that were let in before must enter again.",
    };
    private readonly Option<double> _rate = StageCommand.ClockRate();

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        _address.Validators.Add(CheckAddress);
        foreach (var option in new Option[] { _data, _address, _port, _newToken, _simulated, _simBench, _rate })
            command.Add(option);
    }

    /// <summary>How the page is served.</summary>
    public BenchPageOptions Options(ParseResult parsed) => new()
    {
        Address = IPAddress.Parse(parsed.GetValue(_address)!), Port = parsed.GetValue(_port), Desk = Desk(parsed),
    };

    /// <summary>The simulated bench; none where a real one is meant.</summary>
    public string? SimulatedBench(ParseResult parsed) => parsed.GetValue(_simulated) ? parsed.GetValue(_simBench) : null;

    /// <summary>Whether a new token is made.</summary>
    public bool MakesToken(ParseResult parsed) => parsed.GetValue(_newToken);

    private DeskOptions Desk(ParseResult parsed)
    {
        var isSimulated = parsed.GetValue(_simulated);
        var usual = isSimulated ? Path.Combine(DataFolder.Default, "simulated-bench") : DataFolder.Default;
        var desk = new DeskOptions { Data = Path.GetFullPath(parsed.GetValue(_data) ?? usual), ClockRate = parsed.GetValue(_rate) };
        return isSimulated ? desk with { WiringName = SimulatedWiring } : desk;
    }

    private static void CheckAddress(OptionResult result)
    {
        if (result.Tokens.Count == 1 && !IPAddress.TryParse(result.Tokens[0].Value, out _))
            result.AddError($"--address {result.Tokens[0].Value}: expected an IP address of this computer, such as 127.0.0.1 or 192.0.2.5.");
    }
}

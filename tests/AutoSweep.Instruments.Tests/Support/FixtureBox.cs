using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A small model of a fixture for the tests of the product's side; it takes just the messages that the product sends.</summary>
/// <remarks>Written from docs/fixture-protocol.md, apart from the simulator's own.</remarks>
public sealed class FixtureBox
{
    private readonly SortedSet<int> _closed = [];
    private readonly TaskCompletionSource _silent = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public FixtureBox() => Link = new() { Answer = Answer };

    public FakeLink Link { get; }

    public string Serial { get; init; } = "F-0007";

    public int Relays { get; init; } = 16;

    public string SelfTest { get; init; } = "0";

    /// <summary>A relay whose contact stays as it is whatever it is told.</summary>
    public int? Stuck { get; set; }

    public bool StateInBlock { get; init; }

    /// <summary>A query that is not answered the next time it comes.</summary>
    public string? SilentOnce { get; set; }

    /// <summary>Done when that query has come.</summary>
    public Task Silent => _silent.Task;

    public Queue<string> Errors { get; } = [];

    public IReadOnlyCollection<int> Closed => _closed;

    public IEnumerable<string> RelayMessages =>
        Link.Lines.Where(line => line.StartsWith("ROUT:", StringComparison.Ordinal) && !line.EndsWith('?'));

    public void ExpireWatchdog()
    {
        _closed.Clear();
        Errors.Enqueue("101,\"Watchdog expired\"");
    }

    private string? Answer(string line) => line == SilentOnce ? StaySilent() : AnswerTo(line);

    private string? StaySilent()
    {
        SilentOnce = null;
        _silent.TrySetResult();
        return null;
    }

    private string? AnswerTo(string line) => line switch
    {
        "*IDN?" => $"Invented Instruments,Relay Box,{Serial},1.0\n",
        "*TST?" => $"{SelfTest}\n",
        "*OPC?" => "1\n",
        "SYST:REL?" => $"{Relays}\n",
        "SYST:WATC?" => "10\n",
        "SYST:ERR?" => (Errors.TryDequeue(out var error) ? error : "0,\"No error\"") + "\n",
        "ROUT:CLOS:STAT?" => $"{State()}\n",
        _ => Act(line),
    };

    private string State()
    {
        var list = new ChannelList(_closed).ToString();
        return StateInBlock ? $"#2{list.Length:00}{list}" : list;
    }

    private string? Act(string line)
    {
        if (line == "ROUT:OPEN:ALL")
            _closed.RemoveWhere(relay => relay != Stuck);
        else if (line.StartsWith("ROUT:", StringComparison.Ordinal))
            Array.ForEach(line["ROUT:".Length..].Split(';'), Move);
        return null;
    }

    private void Move(string unit)
    {
        var list = ChannelList.TryParse(unit[4..]) ?? throw new InvalidDataException(unit);
        foreach (var relay in list.Channels.Where(relay => relay != Stuck))
        {
            if (unit.StartsWith("CLOS", StringComparison.Ordinal))
                _closed.Add(relay);
            else
                _closed.Remove(relay);
        }
    }
}

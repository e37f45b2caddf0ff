namespace AutoSweep.Instruments.Tests.Support;

/// <summary>A meter of a few lines: refuses the headers it is told to refuse, answers READ? with what it is told to.</summary>
public sealed class SimpleMeter
{
    private readonly Queue<string> _errors = [];

    public SimpleMeter() => Link = new() { Answer = Answer };

    public FakeLink Link { get; }

    public string Identity { get; init; } = "Invented Instruments,M1,77,1.0";

    public HashSet<string> Refused { get; init; } = [];

    public Queue<string> Readings { get; init; } = [];

    public IEnumerable<string> Commands => Link.Lines.Where(line => !line.EndsWith('?'));

    private string? Answer(string line)
    {
        if (Refused.Contains(line.Split(' ')[0]))
        {
            _errors.Enqueue("-113,\"Undefined header\"");
            return null;
        }

        return line switch
        {
            "*IDN?" => Identity + "\n",
            "SYST:ERR?" => (_errors.TryDequeue(out var error) ? error : "+0,\"No error\"") + "\n",
            "READ?" => (Readings.TryDequeue(out var reading) ? reading : "+1.0E-03") + "\n",
            _ => null,
        };
    }
}

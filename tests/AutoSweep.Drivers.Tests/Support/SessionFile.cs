namespace AutoSweep.Drivers.Tests.Support;

/// <summary>Reads a session file; docs/drivers.md has the format.</summary>
public static class SessionFile
{
    public static IReadOnlyList<SessionStep> Read(string path)
    {
        List<SessionStep> steps = [];
        List<string> wire = [];
        foreach (var (index, line) in File.ReadLines(path).Index())
        {
            switch (line.Length == 0 ? '#' : line[0])
            {
                case '#':
                    break;
                case '!':
                    wire = [];
                    steps.Add(new(index + 1, line[1..].Split(' ', StringSplitOptions.RemoveEmptyEntries), wire, null));
                    break;
                case '>' or '<' when steps.Count > 0:
                    wire.Add($"{line[0]}{line[1..].Trim()}");
                    break;
                case '=' when steps.Count > 0 && steps[^1].Outcome is null:
                    steps[^1] = steps[^1] with { Outcome = line[1..].Trim() };
                    break;
                default:
                    throw new InvalidDataException($"{path}, line {index + 1}: \"{line}\" is no session line");
            }
        }

        return steps;
    }
}

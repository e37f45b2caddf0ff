using AutoSweep.Core;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>A conversation with a meter, recorded or written down from a manual: what a driver is checked against. docs/drivers.md has
/// the format.</summary>
/// <param name="Path">The file.</param>
/// <param name="Remarks">The lines after <c>#</c>, in order.</param>
/// <param name="Steps">Its calls, in order.</param>
public sealed record SessionFile(string Path, IReadOnlyList<string> Remarks, IReadOnlyList<SessionStep> Steps)
{
    /// <summary>Reads a session file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BenchFaultException">A line that is none of a session's; names file and line.</exception>
    public static SessionFile Read(string path) => Parse(path, File.ReadLines(path));

    /// <summary>Reads a session whose lines are at hand.</summary>
    /// <param name="path">The file's name, for messages.</param>
    /// <param name="lines">Its lines.</param>
    /// <exception cref="BenchFaultException">A line that is none of a session's; names file and line.</exception>
    public static SessionFile Parse(string path, IEnumerable<string> lines)
    {
        List<string> remarks = [];
        List<SessionStep> steps = [];
        List<SessionLine> wire = [];
        foreach (var (index, line) in lines.Index())
        {
            switch (line.Length == 0 ? ' ' : line[0])
            {
                case ' ':
                    break;
                case '#':
                    remarks.Add(line[1..].Trim());
                    break;
                case '!':
                    wire = [];
                    steps.Add(new(index + 1, string.Join(' ', line[1..].Split(' ', StringSplitOptions.RemoveEmptyEntries)), wire, null));
                    break;
                case '>' or '<' when steps.Count > 0:
                    wire.Add(new(index + 1, line[0] == '>', line[1..].Trim()));
                    break;
                case '=' when steps.Count > 0 && steps[^1].Outcome is null:
                    steps[^1] = steps[^1] with { Outcome = line[1..].Trim() };
                    break;
                default:
                    throw NoSessionLine(path, index + 1, line);
            }
        }

        return new(path, remarks, steps);
    }

    /// <summary>The fault of one of this session's lines.</summary>
    /// <param name="line">The line, from 1.</param>
    /// <param name="found">What was found there.</param>
    /// <param name="expected">What was expected.</param>
    /// <param name="whatToDo">What to do now.</param>
    public BenchFaultException Fault(int line, string found, string expected, string whatToDo) =>
        new(BenchFault.BadFile, FormattableString.Invariant($"{Path}, line {line}: {found}"), expected, whatToDo);

    private static BenchFaultException NoSessionLine(string path, int line, string text) => new(
        BenchFault.BadFile,
        FormattableString.Invariant($"{path}, line {line}: \"{text}\" is no line of a session"),
        "a line that begins with # (remark), ! (call), and after a call > (to the meter), < (from it) or one = (what comes of it)",
        "Correct the line; docs/drivers.md shows a session.");
}

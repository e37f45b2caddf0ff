using AutoSweep.Instruments.Meters;
using AutoSweep.Instruments.Meters.Kit;
using AutoSweep.Instruments.Meters.Sessions;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Drivers.Tests.Support;

/// <summary>One thing that a driver reads, as its sessions show it: how it is opened, what is asked, what the meter says, what comes of
/// it.</summary>
/// <remarks>All words of the meter are the sessions': a maker's printed examples or a recording, not what the driver would like to
/// hear.</remarks>
public sealed record DriverScene
{
    private static readonly string[] Calls = ["read", "count", "measure"];

    public required MeterDriver Driver { get; init; }

    /// <summary>The calls before the reading: open, and how the level was prepared.</summary>
    public required IReadOnlyList<string> Opening { get; init; }

    public required string Call { get; init; }

    public required string Query { get; init; }

    public required string Reply { get; init; }

    public required string Outcome { get; init; }

    /// <summary>What the meter says to everything else, by message.</summary>
    public required IReadOnlyDictionary<string, string> Answers { get; init; }

    /// <summary>What the meter says over its range, where a session shows it.</summary>
    public string? Overload { get; init; }

    /// <summary>What the meter says when it has refused something: a session's words, else the standard's.</summary>
    public required string Refusal { get; init; }

    public static TheoryData<string, string> All
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (var name in DriverLibrary.BesideProgram.Names)
                foreach (var call in Calls.Where(call => Shown(Sessions(name), call) is not null))
                    data.Add(name, call);
            return data;
        }
    }

    public static DriverScene Of(string name, string call)
    {
        var (driver, sessions) = (DriverLibrary.BesideProgram.Read(name), Sessions(name));
        var (session, at) = Shown(sessions, call)!.Value;
        var steps = sessions.SelectMany(one => one.Steps).ToArray();
        return new()
        {
            Driver = driver,
            Opening = Before(session, at),
            Call = call,
            Query = Asked(session.Steps[at])!,
            Reply = Said(session.Steps[at])!,
            Outcome = session.Steps[at].Outcome!,
            Answers = AnswersIn(driver, session),
            Overload = steps.FirstOrDefault(step => step.Call == call && step.Outcome == "overload") is { } over ? Said(over) : null,
            Refusal = RefusalIn(driver, steps),
        };
    }

    private static SessionFile[] Sessions(string name) =>
        [.. DriverFolders.Read(name).Sessions.Select(session => SessionFile.Parse(session.Path, session.Lines))];

    private static (SessionFile Session, int At)? Shown(IEnumerable<SessionFile> sessions, string call) => sessions
        .SelectMany(session => session.Steps.Index(), (session, step) => ((SessionFile Session, int At)?)(session, step.Index))
        .FirstOrDefault(place => place!.Value.Session.Steps[place.Value.At] is var step && step.Call == call && IsValue(step.Outcome) && Asked(step) is not null);

    private static bool IsValue(string? outcome) =>
        outcome is not null && (outcome.StartsWith("value ", StringComparison.Ordinal) || outcome.StartsWith("capacitance ", StringComparison.Ordinal));

    private static List<string> Before(SessionFile session, int at)
    {
        var before = session.Steps.Take(at).Select(step => step.Call).ToList();
        var opening = before.Last(call => call.StartsWith("open", StringComparison.Ordinal));
        return [opening, .. before.LastOrDefault(call => call.StartsWith("prepare", StringComparison.Ordinal)) is { } prepare ? [prepare] : Array.Empty<string>()];
    }

    private static string? Asked(SessionStep step) => step.Wire.LastOrDefault(line => line.ToMeter)?.Text;

    private static string? Said(SessionStep step) => step.Wire.LastOrDefault(line => !line.ToMeter)?.Text;

    // Where a message is answered in several ways the last stands: an error queue's entries come first, then "no error".
    private static Dictionary<string, string> AnswersIn(MeterDriver driver, SessionFile session)
    {
        Dictionary<string, string> answers = [];
        foreach (var step in session.Steps)
            foreach (var (asked, said) in step.Wire.Zip(step.Wire.Skip(1)).Where(pair => pair.First.ToMeter && !pair.Second.ToMeter))
                if (asked.Text != driver.ErrorQuery || ScpiError.TryParse(said.Text) is { Number: 0 })
                    answers[asked.Text] = said.Text;
        return answers;
    }

    // Without a comma it is the event register: bit 5 is a command error (IEEE 488.2, 11.5.1.1). Else SCPI-1999 volume 2, 21.8.
    private static string RefusalIn(MeterDriver driver, IEnumerable<SessionStep> steps)
    {
        var told = steps.SelectMany(step => step.Wire.Zip(step.Wire.Skip(1)))
            .Where(pair => pair.First.Text == driver.ErrorQuery && !pair.Second.ToMeter).Select(pair => pair.Second.Text).ToArray();
        return told.FirstOrDefault(text => ScpiError.TryParse(text) is { IsCommandError: true } or { Number: > 0 })
            ?? (told.Any(text => text.Contains(',', StringComparison.Ordinal)) ? "-113,\"Undefined header\"" : "32");
    }
}

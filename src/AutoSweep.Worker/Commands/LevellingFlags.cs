using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AutoSweep.Core.Magnets;
using AutoSweep.Worker.Levelling;

namespace AutoSweep.Worker.Commands;

/// <summary>The flags that say how outputs are levelled.</summary>
public sealed class LevellingFlags
{
    private readonly Option<bool> _understood = new("--understood")
    {
        Description = "The hazard at the magnets was read and understood, by who types this, for this session. Left out: it is shown and asked for.",
    };
    private readonly Option<double> _leastGap = new("--least-gap")
    {
        Description = "A feeler gauge leaf of so many millimetres (brass or plastic, wheel stopped) went in between every rod and its wheel.",
        HelpName = "MM",
        DefaultValueFactory = _ => MagnetRod.UnmeasuredGapMillimetres,
    };
    private readonly Option<string[]> _gaps = new("--gap")
    {
        Description = "The thickest leaf that went in at one output, in millimetres: 61=0.45. May be given again and again.",
        HelpName = "OUTPUT=MM",
    };
    private readonly Option<double> _band = new("--band")
    {
        Description = "How far a level may be off its target to either side, in dB.",
        HelpName = "DB",
        DefaultValueFactory = _ => new MagnetGuidanceOptions().HalfBandDecibels,
    };
    private readonly Option<bool> _withoutRecap = new("--without-recap")
    {
        Description = "This job changes no capacitors: the levels of the survey are levelled.",
    };
    private readonly Option<bool> _undo = new("--undo") { Description = "Take the last reading or outcome at the magnets back instead." };

    /// <summary>Adds the flags to a command.</summary>
    public void AddTo(Command command)
    {
        FlagRange.Require(_leastGap, 0, 10);
        FlagRange.Require(_band, 0.05, 6);
        _gaps.Validators.Add(Check);
        foreach (var option in new Option[] { _understood, _leastGap, _gaps, _band, _withoutRecap, _undo })
            command.Add(option);
    }

    /// <summary>What the flags ask for; nobody has acknowledged the hazard yet.</summary>
    public LevellingOptions Read(ParseResult parsed) => new()
    {
        LeastGapMillimetres = parsed.GetValue(_leastGap),
        Gaps = (parsed.GetValue(_gaps) ?? []).Select(Parse).Select(gap => gap!.Value).GroupBy(gap => gap.Output)
            .ToDictionary(one => one.Key, one => one.Min(gap => gap.Millimetres)),
        WithoutRecap = parsed.GetValue(_withoutRecap),
        Guidance = new() { HalfBandDecibels = parsed.GetValue(_band) },
    };

    /// <summary>How the hazard was acknowledged on the command line; none where it was not.</summary>
    public string? Acknowledged(ParseResult parsed) => parsed.GetValue(_understood) ? "--understood" : null;

    /// <summary>Whether the last entry is to be taken back instead.</summary>
    public bool IsUndo(ParseResult parsed) => parsed.GetValue(_undo);

    private static void Check(OptionResult result)
    {
        foreach (var token in result.Tokens.Where(token => Parse(token.Value) is null))
            result.AddError($"--gap: '{token.Value}' is no gap. Expected an output and millimetres, as in 61=0.45, up to 10 mm.");
    }

    private static (int Output, double Millimetres)? Parse(string text) =>
        text.Split('=') is [var output, var gap]
        && int.TryParse(output, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
        && double.TryParse(gap, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var millimetres) && millimetres is >= 0 and <= 10
            ? (number, millimetres) : null;
}

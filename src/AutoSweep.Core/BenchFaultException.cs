namespace AutoSweep.Core;

/// <summary>Something about the bench, a file or a wire is broken, and a person must act before the job can go on.</summary>
/// <remarks>
/// Expected outcomes (no peak in range, overload, an unknown tone) are values, never this. The message is made of what was found,
/// what was expected and what to do, so that it can be shown as it stands.
/// </remarks>
public sealed class BenchFaultException : Exception
{
    /// <summary>A fault with the three things that the person at the bench must be told.</summary>
    /// <param name="kind">Which fault; decides the exit code of a command.</param>
    /// <param name="found">What was found, with the name of the file, wire or instrument.</param>
    /// <param name="expected">What was expected instead.</param>
    /// <param name="whatToDo">What to do now.</param>
    /// <param name="inner">The exception that showed it, or none.</param>
    public BenchFaultException(BenchFault kind, string found, string expected, string whatToDo, Exception? inner = null)
        : base($"Found: {found}\nExpected: {expected}\nWhat to do: {whatToDo}", inner) =>
        (Kind, Found, Expected, WhatToDo) = (kind, found, expected, whatToDo);

    /// <summary>Which fault it is.</summary>
    public BenchFault Kind { get; }

    /// <summary>What was found.</summary>
    public string Found { get; }

    /// <summary>What was expected instead.</summary>
    public string Expected { get; }

    /// <summary>What to do now.</summary>
    public string WhatToDo { get; }

    /// <summary>What a terminal's user can type for it, such as <c>--resume</c>; none where nothing is to be typed. A page has a button of its own.</summary>
    public string? AtTerminal { get; init; }

    /// <summary>The resource name of the instrument whose link broke, or that fell silent; none for every other fault.</summary>
    /// <remarks>Where the instrument had been at work, its return mends the fault: it can be waited for.</remarks>
    public string? LostResource { get; init; }
}

using AutoSweep.Core;

namespace AutoSweep.Worker.Page.Setup;

/// <summary>What a check of one wire of the bench found, in plain words.</summary>
/// <param name="Wire">The wire.</param>
/// <param name="Verdict">Whether it is good.</param>
/// <param name="Found">What was found.</param>
/// <param name="Expected">What should have been found.</param>
/// <param name="WhatToDo">What to do; empty where nothing is to be done.</param>
public sealed record WireResult(string Wire, WireVerdict Verdict, string Found, string Expected, string WhatToDo = "")
{
    /// <summary>A wire that is not good, by the fault that its check met.</summary>
    public static WireResult Of(string wire, BenchFaultException fault) =>
        new(wire, WireVerdict.NotGood, fault.Found, fault.Expected, fault.WhatToDo);
}

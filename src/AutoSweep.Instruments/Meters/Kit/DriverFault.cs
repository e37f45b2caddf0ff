using AutoSweep.Core;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>What is wrong with a driver folder, in one place.</summary>
/// <param name="Found">What was found, with file and line.</param>
/// <param name="Expected">What was expected instead.</param>
/// <param name="WhatToDo">What to do now.</param>
public sealed record DriverFault(string Found, string Expected, string WhatToDo)
{
    /// <summary>The same as a fault that was thrown.</summary>
    public static DriverFault Of(BenchFaultException fault) => new(fault.Found, fault.Expected, fault.WhatToDo);
}

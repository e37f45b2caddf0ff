using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;
using Microsoft.Extensions.Logging.Abstractions;

namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>Plays a session against a driver: the driver must send exactly its lines and make of the replies what the session
/// says.</summary>
public static class SessionReplay
{
    // Hours, so that InstantTime never lets a time-out strike by itself.
    private static readonly ExchangeOptions Patient = new() { QueryTimeout = TimeSpan.FromHours(2) };

    /// <summary>Plays a session to its end.</summary>
    /// <param name="session">The session.</param>
    /// <param name="driver">The driver.</param>
    /// <exception cref="BenchFaultException">The driver does otherwise; names file and line, what the driver does and what the session
    /// has.</exception>
    public static async Task PlayAsync(SessionFile session, MeterDriver driver)
    {
        if (session.Steps.Count == 0)
            throw session.Fault(1, "no call", "at least \"! open\" and what follows", "Write down a conversation; docs/drivers.md shows one.");
        SessionStep? current = null;
        ReplayLink? link = null;
        var time = new InstantTime();
        await using var player = new SessionPlayer(driver, serial =>
        {
            link = new ReplayLink(driver, serial ? "ASRL/dev/ttyREPLAY::INSTR" : "TCPIP::meter.test::5025::SOCKET");
            link.Expect(current!);
            return new(link, MeterSessionOptions.Of(driver, Patient), time, NullLogger.Instance);
        }, time);
        foreach (var step in session.Steps)
        {
            current = step;
            link?.Expect(step);
            var outcome = await OutcomeAsync(session, step, player, () => link?.Deviation);
            link?.ExpectNothingMore();
            if (link?.Deviation is { } deviation)
                throw Left(session, deviation);
            if (outcome != step.Outcome)
                throw Otherwise(session, step, outcome);
        }
    }

    private static async Task<string?> OutcomeAsync(
        SessionFile session, SessionStep step, SessionPlayer player, Func<SessionDeviation?> deviation)
    {
        try
        {
            return await player.PlayAsync(step.Call, CancellationToken.None);
        }
        catch (BenchFaultException) when (deviation() is { } left)
        {
            throw Left(session, left);
        }
        catch (BenchFaultException fault)
        {
            throw session.Fault(step.LineNumber, fault.Found, fault.Expected, fault.WhatToDo);
        }
    }

    private static BenchFaultException Left(SessionFile session, SessionDeviation deviation) => session.Fault(
        deviation.LineNumber, deviation.Found, deviation.Expected,
        "Correct driver.json where the session is what the manual prints or a meter was heard to say; else correct the session.");

    private static BenchFaultException Otherwise(SessionFile session, SessionStep step, string? outcome) => session.Fault(
        step.LineNumber, outcome is null ? $"nothing comes of \"{step.Call}\"" : $"the driver makes \"{outcome}\" of it",
        step.Outcome is null ? "no \"=\" line in the session" : $"\"{step.Outcome}\"",
        "Look at the reply: which field is the number, which words mean overload; or correct the session's \"=\" line.");
}

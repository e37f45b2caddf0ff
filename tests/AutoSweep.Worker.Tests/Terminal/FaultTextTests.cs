using AutoSweep.Core;
using AutoSweep.Worker.Terminal;
using AutoSweep.Worker.Tests.Support;

namespace AutoSweep.Worker.Tests.Terminal;

public sealed class FaultTextTests
{
    [Fact]
    public void Found_expected_and_what_to_do_stand_on_lines_of_their_own()
    {
        var text = Written(new BenchFaultException(BenchFault.BadFile, "a field [metre]", "one of [meter]", "mend it"));

        Assert.Equal(["Found:      a field [metre]", "Expected:   one of [meter]", "What to do: mend it"], text);
    }

    [Fact]
    public void A_terminal_adds_what_can_be_typed()
    {
        var text = Written(new BenchFaultException(BenchFault.JobInUse, "a job", "none", "go on with it") { AtTerminal = "--resume" });

        Assert.Equal("What to do: go on with it (--resume)", text[2]);
    }

    [Fact]
    public void A_fault_that_nobody_foresaw_says_that_nothing_is_lost()
    {
        var text = Written(new InvalidOperationException("odd [thing]"));

        Assert.Contains("odd [thing]", text[0], StringComparison.Ordinal);
        Assert.Contains("--resume", text[1], StringComparison.Ordinal);
    }

    private static string[] Written(Exception fault)
    {
        var screen = new Screen();
        FaultText.Write(screen.Console, fault);
        return screen.Lines;
    }
}

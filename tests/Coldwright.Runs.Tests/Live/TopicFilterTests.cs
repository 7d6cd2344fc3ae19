using Coldwright.Runs.Live;

namespace Coldwright.Runs.Tests.Live;

/// <summary>The examples of the standard: MQTT Version 3.1.1, OASIS 2014, sections 4.7.1 and 4.7.2.</summary>
public class TopicFilterTests
{
    [Theory]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1", true)]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1/ranking", true)]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1/score/wimbledon", true)]
    [InlineData("sport/#", "sport", true)]
    [InlineData("sport/tennis/+", "sport/tennis/player1", true)]
    [InlineData("sport/tennis/+", "sport/tennis/player1/ranking", false)]
    [InlineData("sport/+", "sport", false)]
    [InlineData("sport/+", "sport/", true)]
    [InlineData("+/+", "/finance", true)]
    [InlineData("/+", "/finance", true)]
    [InlineData("+", "/finance", false)]
    [InlineData("#", "$SYS/uptime", false)]
    [InlineData("+/monitor/Clients", "$SYS/monitor/Clients", false)]
    [InlineData("$SYS/#", "$SYS/uptime", true)]
    [InlineData("Accounts", "ACCOUNTS", false)]
    [InlineData("sport/#", "sport/+/score", true)]
    [InlineData("sport/+", "sport/#", false)]
    public void CoversWhatTheStandardSays(string filter, string topic, bool covers) => Assert.Equal(covers, TopicFilter.Covers(filter, topic));

    [Theory]
    [InlineData("sport/tennis#")]
    [InlineData("sport/tennis/#/ranking")]
    [InlineData("sport+")]
    [InlineData("")]
    public void RefusesWhatTheStandardRefuses(string filter) => Assert.NotEqual("", TopicFilter.Complaint(filter));

    [Theory]
    [InlineData("#")]
    [InlineData("+/tennis/#")]
    [InlineData("sport/+/player1")]
    public void TakesWhatTheStandardTakes(string filter) => Assert.Equal("", TopicFilter.Complaint(filter));

    [Fact]
    public void NothingIsAskedForTwice() =>
        Assert.Equal(["b/+", "a/#"], TopicFilter.Least(["a/x", "b/+", "a/#", "b/y", "a", "b/+"]));
}

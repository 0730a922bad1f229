using System.Net;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>What servers say. The sentences of 1.6.7 were heard from it (see FeedTests); the 422 of 2.x is from its published description of the interface and was not heard.</summary>
public sealed class WriteAnswerTests
{
    [Theory]
    [InlineData(400, "partial write: field type conflict: input field \"value\" on measurement \"reading\" is type float, already exists as type integer dropped=3", Taking.LinesRefused, 3)]
    [InlineData(400, "unable to parse 'reading,circuit=a value=': missing field value", Taking.LinesRefused, null)]
    [InlineData(422, "failure writing points to database: partial write: points beyond retention policy dropped=1", Taking.BeyondRetention, 1)]
    [InlineData(400, "precision is not known", Taking.NotNow, null)]
    [InlineData(401, "authorization failed", Taking.NotAllowed, null)]
    [InlineData(403, "not authorized to write", Taking.NotAllowed, null)]
    [InlineData(404, "database not found: \"plantwatch\"", Taking.NotThere, null)]
    [InlineData(429, "too many", Taking.NotNow, null)]
    [InlineData(413, "too large", Taking.NotNow, null)]
    [InlineData(500, "timeout", Taking.NotNow, null)]
    [InlineData(503, "engine is closed", Taking.NotNow, null)]
    public void A_status_with_its_words_is_understood(int status, string words, Taking taking, int? dropped)
    {
        var answer = WriteAnswer.Of((HttpStatusCode)status, words, TimeSpan.FromSeconds(7));

        Assert.Equal((taking, dropped), (answer.Taking, answer.Dropped));
        Assert.Equal(taking == Taking.NotNow ? TimeSpan.FromSeconds(7) : TimeSpan.Zero, answer.NotBefore);
    }

    [Fact]
    public void The_same_refusal_of_other_lines_is_the_same_reason()
    {
        var one = WriteAnswer.Of(HttpStatusCode.BadRequest, "partial write: unable to parse 'reading,circuit=a value=x 1': bad number dropped=2", default);
        var other = WriteAnswer.Of(HttpStatusCode.BadRequest, "partial write: unable to parse 'reading,circuit=b value=y 2': bad number dropped=5", default);

        Assert.Equal(one.Words, other.Words);
        Assert.Equal("partial write: unable to parse '...': bad number", one.Words);
    }
}
